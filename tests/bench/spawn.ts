import { spawnSync } from 'node:child_process';
import type { Job } from './jobs.ts';

/** What a process answered, line by line, and why it did not answer all. */
export interface Outcome<T> {
  readonly answers: readonly T[];
  readonly failure: string | null;
}

/** Does a job in a process of its own and stops it when the time is up. */
export function inChild<T>(child: string, job: Job, limitMs: number): Outcome<T> {
  const done = spawnSync(process.execPath, ['--expose-gc', child, JSON.stringify(job)], {
    encoding: 'utf8',
    timeout: limitMs,
    killSignal: 'SIGKILL',
    maxBuffer: 64 * 1024 * 1024,
  });
  // The last line has no end where the process was stopped in the middle of it.
  const answers = done.stdout
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as T);
  return { answers, failure: failureOf(done, limitMs) };
}

function failureOf(
  { error, status, signal, stderr }: ReturnType<typeof spawnSync> & { stderr: string },
  limitMs: number,
): string | null {
  if (error && 'code' in error && error.code === 'ETIMEDOUT') return `no answer within ${limitMs / 1000} s`;
  if (status === 0) return null;
  // Node prints the line of code, the message, then the stack.
  const message = stderr.split('\n').find((line) => /^\s*(\w*Error|RuntimeError|Aborted)\b.*/.test(line));
  return message?.trim() ?? `the process ended with ${signal ?? status}`;
}
