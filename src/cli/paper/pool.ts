import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { failedJob, type JobResult, type PaperJob } from './paper-job.ts';

/** Fewest jobs for several threads: fewer are done before a second thread has started. */
const FEWEST_JOBS = 4;

/** Worker data that identifies a thread of this program. */
export const WORKER_MARK = 'stillspot-papers';

/** The answer of a thread to one job. */
export interface WorkerReply {
  readonly index: number;
  readonly result: JobResult;
}

interface Work {
  readonly index: number;
  readonly job: PaperJob;
}

/** The jobs still to be done, and the receiver of their results. */
interface Queue {
  /** Returns the next job; null if none is left. */
  readonly take: () => Work | null;
  readonly put: (index: number, result: JobResult) => void;
}

/**
 * Returns the results of the jobs, done in several threads, in the order of the jobs. Null if there are few jobs or one processor, or if this
 * is not the built program, which a thread needs.
 */
export async function inWorkers(
  jobs: readonly PaperJob[],
  progress: (done: number) => void,
): Promise<readonly JobResult[] | null> {
  const count = Math.min(availableParallelism(), jobs.length);
  const address = new URL('./main.mjs', import.meta.url);
  if (jobs.length < FEWEST_JOBS || count < 2 || import.meta.url.endsWith('.ts')) return null;
  const results: JobResult[] = [];
  let [next, done] = [0, 0];
  progress(0);
  const queue: Queue = {
    take: () => {
      const index = next++;
      const job = jobs[index];
      return job ? { index, job } : null;
    },
    put: (index, result) => {
      results[index] = result;
      done += 1;
      progress(done);
    },
  };
  // A thread that ended during a plan, e.g. without memory, is replaced by a new one.
  const lane = async () => {
    while (next < jobs.length) await runThread(address, queue);
  };
  await Promise.all(Array.from({ length: count }, lane));
  return results;
}

/** Resolves when no job is left, or when the thread has ended by itself: its job then counts as failed. */
function runThread(address: URL, { take, put }: Queue): Promise<void> {
  return new Promise((resolve) => {
    const worker = new Worker(address, { workerData: WORKER_MARK });
    let work: Work | null = null;
    let trouble: unknown = null;
    const give = () => {
      work = take();
      if (work) worker.postMessage(work);
      else void worker.terminate();
    };
    worker.on('message', ({ index, result }: WorkerReply) => {
      put(index, result);
      give();
    });
    worker.on('error', (error) => {
      trouble = error;
    });
    worker.on('exit', (code) => {
      if (work) put(work.index, failedJob(work.job, trouble ?? new Error(`Its thread ended with ${code}.`)));
      resolve();
    });
    give();
  });
}
