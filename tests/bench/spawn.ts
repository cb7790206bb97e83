import { spawnSync } from 'node:child_process';
import type { Job } from './jobs.ts';

/** The answers of a process, one per line, and why it did not answer all; null if it did. */
export interface Outcome<T> {
  readonly answers: readonly T[];
  readonly failure: string | null;
}

/** Does a job in a separate process, which is killed after `limitMs`. */
export function inChild<T>(child: string, job: Job, limitMs: number): Outcome<T> {
  const done = spawnSync(process.execPath, ['--expose-gc', child, JSON.stringify(job)], {
    encoding: 'utf8',
    timeout: limitMs,
    killSignal: 'SIGKILL',
    maxBuffer: 64 * 1024 * 1024,
  });
  // The last line is incomplete if the process was stopped while writing it.
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
