/** The process of one job: reads it from the command line, writes its results as lines of JSON. */
import { writeSync } from 'node:fs';
import { doJob, type Job } from './jobs.ts';

const job = JSON.parse(process.argv[2] ?? 'null') as Job;
// Written at once: a process that is stopped for taking too long has then reported its results so far.
await doJob(job, (answer) => writeSync(1, `${JSON.stringify(answer)}\n`));
// Some WebAssembly libraries keep a process alive.
process.exit(0);
