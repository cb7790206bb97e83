import type { Plan } from '../../../geometry/plan/model.ts';
import { ORIENTATIONS, PAPER_NAMES, type PageChoice, type PaperName } from '../../report/paper.ts';
import { type Call, type CommandResult, readPlan, UnusableError } from '../call.ts';
import {
  choiceOption,
  formatOf,
  makeFolder,
  outOption,
  pathsIn,
  reasonNotToReplace,
  reasonNotToReplacePages,
  writeFiles,
} from '../output.ts';
import { failedJob, type JobResult, type MadePaper, type PaperJob } from './paper-job.ts';
import { inWorkers } from './pool.ts';
import { showProgress } from './progress.ts';

/** Exit code of a fault of Stillspot itself. */
const OWN_FAULT = 3;

/** A command that writes papers of each plan it is given. */
export interface PaperCommand {
  readonly name: string;
  readonly formats: readonly string[];
  /** Checks the options that depend on the plan, beyond paper and orientation. @throws UnusableError with the problem */
  readonly checkOptions?: (plan: Plan, job: PaperJob) => void;
  readonly make: (plan: Plan, job: PaperJob) => Promise<MadePaper>;
}

/** Does one job: reads the plan, makes its paper, writes it. A fault of Stillspot is returned as a result, so that other jobs continue. */
export async function doJob({ make }: PaperCommand, job: PaperJob): Promise<JobResult> {
  try {
    const { files, ...rest } = await make(readPlan(job.file), job);
    writeFiles(files, job.force);
    return { ok: true, files: files.map(({ path }) => path), rest };
  } catch (error) {
    return error instanceof UnusableError ? { ok: false, problem: error.message, fault: false } : failedJob(job, error);
  }
}

/**
 * Runs the command for each plan: one into the file that `--out` names, several into the folder that it names, many in several threads. A
 * bad plan does not stop the others; nothing is written if an option is not usable, or if a file must not be replaced.
 * @throws UnusableError when nothing is written
 */
export async function overPlans(command: PaperCommand, call: Call): Promise<CommandResult> {
  const jobs = jobsOf(command, call);
  const unusable = new Set(jobs.flatMap((job, index) => problemsOf(command, job, call.plans[index])));
  // For one plan, all pages are drawn before the first is written, and files that must not be replaced are reported then.
  if (jobs.length > 1) for (const reason of jobs.flatMap(pagesInTheWay)) unusable.add(reason);
  if (unusable.size > 0) throw new UnusableError([...call.refused, ...unusable].join('\n'));
  if (call.several) makeFolder(call.options.out ?? '');
  const progress = (done: number) => call.several && showProgress(done, jobs.length);
  const results = (await inWorkers(jobs, progress)) ?? (await inOrder(command, jobs, progress));
  const done = results.flatMap((result) => (result.ok ? [result] : []));
  const failed = results.flatMap((result) => (result.ok ? [] : [result]));
  const problems = failed.map(({ problem }) => problem);
  const isFault = failed.some(({ fault }) => fault);
  if (done.length === 0 && !isFault) throw new UnusableError([...call.refused, ...problems].join('\n'));
  const verdictCode = done.every(({ rest }) => rest.fine) ? 0 : 1;
  const code = problems.length > 0 || call.refused.length > 0 ? 2 : verdictCode;
  return { text: textOf(call, done), code: isFault ? OWN_FAULT : code, problems };
}

/** Returns the problems of a job that can be found before anything is drawn or written. */
function problemsOf({ checkOptions }: PaperCommand, job: PaperJob, plan: Plan | undefined): readonly string[] {
  const barred = reasonNotToReplace(job.path, job.force);
  if (!plan) return barred;
  try {
    pageOption(job, plan);
    checkOptions?.(plan, job);
    return barred;
  } catch (error) {
    if (!(error instanceof UnusableError)) throw error;
    return [...barred, error.message];
  }
}

function pagesInTheWay({ path, format, force }: PaperJob): readonly string[] {
  return format === 'svg' || format === 'png' ? reasonNotToReplacePages(path, force) : [];
}

async function inOrder(
  command: PaperCommand,
  jobs: readonly PaperJob[],
  progress: (done: number) => void,
): Promise<readonly JobResult[]> {
  const results: JobResult[] = [];
  for (const job of jobs) {
    progress(results.length);
    results.push(await doJob(command, job));
  }
  progress(results.length);
  return results;
}

function jobsOf(command: PaperCommand, call: Call): readonly PaperJob[] {
  const { name, formats } = command;
  const out = outOption(call, name, call.several ? 'papers' : `${name}.pdf`);
  const format = call.several ? choiceOption(call, 'format', formats, 'pdf') : formatOfOne(call, out, formats);
  const paths = call.several ? pathsIn(out, call.names, format) : [out];
  return call.names.map((file, index) => ({
    command: name,
    file,
    path: paths[index] ?? '',
    format,
    options: call.options,
    force: call.flags.has('force'),
  }));
}

/** Returns the format of one paper by the ending of its name. @throws UnusableError when `--format` names another one */
function formatOfOne(call: Call, out: string, formats: readonly string[]): string {
  const format = formatOf(out, formats);
  const asked = choiceOption(call, 'format', formats, format);
  if (asked !== format) throw new UnusableError(`--format "${asked}" is not the ending of --out ${out}.`);
  return format;
}

/** The output; empty if no job was done. */
function textOf(call: Call, done: readonly Done[]): string {
  if (done.length === 0) return '';
  return call.json ? asJson(call, done) : asText(done);
}

type Done = Extract<JobResult, { ok: true }>;

function asJson({ several }: Call, done: readonly Done[]): string {
  const documents = done.map(({ files, rest }) => ({ files, lackingLetters: rest.lacking, ...rest.document }));
  return `${JSON.stringify(several ? { plans: documents } : documents[0], null, 2)}\n`;
}

function asText(done: readonly Done[]): string {
  const lines = done.flatMap(({ files, rest: { notes, lacking } }) => [
    ...files.map((file) => `Wrote ${file}`),
    ...notes.map((note) => `  ${note}`),
    ...(lacking.length > 0 ? [`  Not in the font of the pages, drawn as empty boxes: ${lacking.join(' ')}`] : []),
  ]);
  return `${lines.join('\n')}\n`;
}

/** Returns the paper of the option, else the usual one for the plan's units of length. */
function paperOption(job: PaperJob, { display }: Plan): PaperName {
  return choiceOption(job, 'paper', PAPER_NAMES, display.length === 'metric' ? 'a4' : 'letter');
}

/** Returns the paper with the orientation of the option; left out, the drawing decides. */
export function pageOption(job: PaperJob, plan: Plan): PageChoice {
  const paper = paperOption(job, plan);
  return job.options.orientation === undefined
    ? { paper }
    : { paper, orientation: choiceOption(job, 'orientation', ORIENTATIONS, 'landscape') };
}
