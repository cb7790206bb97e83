import { parentPort, workerData } from 'node:worker_threads';
import { setSunSource } from '../../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../../geometry/sun/swept.ts';
import { noticePaper } from '../notice.ts';
import { reportPaper } from '../report.ts';
import { sheetPaper } from '../sheet.ts';
import { doJob } from './paper-command.ts';
import type { PaperJob } from './paper-job.ts';
import { WORKER_MARK, type WorkerReply } from './pool.ts';

const COMMANDS = [sheetPaper, reportPaper, noticePaper];

/** Does the jobs that the main thread sends, if this is a thread for papers. */
export function serveJobs(): void {
  if (workerData !== WORKER_MARK) return;
  setSunSource(sweptArea);
  parentPort?.on('message', async ({ index, job }: { readonly index: number; readonly job: PaperJob }) => {
    const command = COMMANDS.find(({ name }) => name === job.command);
    if (!command) throw new Error(`There is no command "${job.command}".`);
    const reply: WorkerReply = { index, result: await doJob(command, job) };
    parentPort?.postMessage(reply);
  });
}
