import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { JobResult, PaperJob } from './paper-job.ts';

/** Fewer jobs than these are done before a second thread has started. */
const FEWEST_JOBS = 4;

/** What a thread of this program is started with, so that it knows that it is one. */
export const WORKER_MARK = 'stillspot-papers';

/** The answer of a thread to one job. */
export interface WorkerReply {
  readonly index: number;
  readonly result: JobResult;
}

/**
 * Returns the results of the jobs, done in several threads, in their order. Null where there are few jobs or one processor, and where this
 * is not the built program, which a thread can run.
 */
export async function inWorkers(
  jobs: readonly PaperJob[],
  progress: (done: number) => void,
): Promise<readonly JobResult[] | null> {
  const count = Math.min(availableParallelism(), jobs.length);
  const address = new URL('./main.mjs', import.meta.url);
  if (jobs.length < FEWEST_JOBS || count < 2 || import.meta.url.endsWith('.ts')) return null;
  const results: JobResult[] = [];
  let next = 0;
  let done = 0;
  progress(0);
  const runOne = () =>
    new Promise<void>((resolve, reject) => {
      const worker = new Worker(address, { workerData: WORKER_MARK });
      let isBusy = false;
      const give = () => {
        const index = next++;
        const job = jobs[index];
        isBusy = job !== undefined;
        if (job) worker.postMessage({ index, job });
        else void worker.terminate().then(() => resolve());
      };
      worker.on('error', reject);
      worker.on('exit', (code) => isBusy && reject(new Error(`A thread ended with ${code} in the middle of a plan.`)));
      worker.on('message', ({ index, result }: WorkerReply) => {
        results[index] = result;
        done += 1;
        progress(done);
        give();
      });
      give();
    });
  await Promise.all(Array.from({ length: count }, runOne));
  return results;
}
