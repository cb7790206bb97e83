const CELLS = 30;

/** Shows on a terminal how many of all plans are done; nothing if standard error is a file or a pipe. */
export function showProgress(done: number, all: number): void {
  if (!process.stderr.isTTY) return;
  const full = Math.round((CELLS * done) / all);
  process.stderr.write(
    `\r[${'#'.repeat(full)}${'.'.repeat(CELLS - full)}] ${done} of ${all}${done === all ? '\n' : ''}`,
  );
}
