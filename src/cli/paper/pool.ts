import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { failedJob, type JobResult, type PaperJob } from './paper-job.ts';

/** Fewer jobs than these are done before a second thread has started. */
const FEWEST_JOBS = 4;

/** What a thread of this program is started with, so that it knows that it is one. */
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

/** The jobs that are still to be done, and where their results go. */
interface Queue {
  /** Null where there is none left. */
  readonly take: () => Work | null;
  readonly put: (index: number, result: JobResult) => void;
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
  // A thread that ended in the middle of a plan, for want of memory say, is followed by a new one.
  const lane = async () => {
    while (next < jobs.length) await runThread(address, queue);
  };
  await Promise.all(Array.from({ length: count }, lane));
  return results;
}

/** Resolves once no job is left, or the thread has ended by itself: the job that it had then is put down as failed. */
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
