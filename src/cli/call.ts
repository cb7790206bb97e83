import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Plan } from '../../geometry/plan/model.ts';
import { describeFile } from '../../geometry/planfile/limits.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';

/** Invalid arguments or an unusable file: exit code 2, with the message on standard error. */
export class UnusableError extends Error {}

/** Parsed arguments with the plans they name. */
export interface Call {
  readonly file: string;
  readonly plan: Plan;
  /** Plans of all files, in order; more than one only for commands that take several. */
  readonly plans: readonly Plan[];
  /** File names of the plans, in the same order. */
  readonly names: readonly string[];
  readonly json: boolean;
  /** Options with a value, as typed, by name. */
  readonly options: Readonly<Record<string, string | undefined>>;
  /** Names of the options without a value. */
  readonly flags: ReadonlySet<string>;
  /** Whether several files or a folder are named. */
  readonly several: boolean;
  /** Problems of unusable files of a folder: the command continues with the others. */
  readonly refused: readonly string[];
  /** Remarks on the usable files. */
  readonly remarks: readonly string[];
}

export interface CommandResult {
  readonly text: string;
  /** Whether the text is for other programs and is written unchanged: JSON, or a table whose cells are safe. */
  readonly isData?: boolean;
  /** 2: some files of a folder were not usable, or some papers not writable; 3: Stillspot itself failed on some. The others were done. */
  readonly code: 0 | 1 | 2 | 3;
  /** Problems of some of several papers, for standard error. */
  readonly problems?: readonly string[];
}

export interface CliCommand {
  readonly name: string;
  /** Arguments in the usage, e.g. "FILE [--base MM]". */
  readonly synopsis: string;
  readonly summary: string;
  /** Whether it accepts more than one file. */
  readonly takesManyFiles?: boolean;
  /** Whether it accepts a folder for the plans in it; a bad file in a folder does not stop the others. */
  readonly takesFolders?: boolean;
  /** Names of options that take a value. */
  readonly options: readonly string[];
  /** Names of options without a value. */
  readonly flags?: readonly string[];
  readonly run: (call: Call) => CommandResult | Promise<CommandResult>;
}

/**
 * Parses arguments and reads the plan files.
 * @throws UnusableError with every problem of the arguments or of the files
 */
export function parseCall(command: CliCommand, argv: readonly string[]): Call {
  const { values, positionals } = parseOptions(command, argv);
  const [file, ...more] = positionals;
  if (file === undefined) throw new UnusableError(`No file is named. ${usageOf(command)}`);
  if (more.length > 0 && !command.takesManyFiles)
    throw new UnusableError(`${command.name} takes one file, got ${positionals.length}. ${usageOf(command)}`);
  const flags = new Set<string>();
  const options: Record<string, string> = {};
  for (const [key, value] of Object.entries(values)) {
    if (value === true) flags.add(key);
    else if (typeof value === 'string') options[key] = value;
  }
  const files = command.takesFolders ? positionals.flatMap(plansIn) : positionals;
  const several = files.length !== 1 || files[0] !== file;
  const { plans, names, problems, remarks } = readAll(files);
  const isNamed = ({ file }: FileProblem) => positionals.includes(file);
  const refused = problems.map(({ text }) => text);
  if (problems.some(isNamed) || (problems.length > 0 && plans.length === 0))
    throw new UnusableError(refused.join('\n'));
  return {
    file,
    plan: plans[0] as Plan,
    plans,
    names,
    json: flags.has('json'),
    options,
    flags,
    several,
    refused,
    remarks,
  };
}

/** Returns the plan files in a folder, by name; for a file the file itself. @throws UnusableError when the folder has none */
function plansIn(path: string): readonly string[] {
  if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return [path];
  const names = readdirSync(path).filter((name) => name.endsWith('.plan.json'));
  if (names.length === 0) throw new UnusableError(`${path}: there is no plan file (.plan.json) in this folder.`);
  return names.sort().map((name) => join(path, name));
}

function parseOptions(command: CliCommand, argv: readonly string[]) {
  const options = [
    ...command.options.map((name) => [name, { type: 'string' as const }] as const),
    ...['json', ...(command.flags ?? [])].map((name) => [name, { type: 'boolean' as const }] as const),
  ];
  try {
    return parseArgs({ args: [...argv], allowPositionals: true, options: Object.fromEntries(options) });
  } catch (error) {
    throw new UnusableError(`${error instanceof Error ? error.message : String(error)}\n${usageOf(command)}`);
  }
}

function usageOf({ name, synopsis }: CliCommand): string {
  return `Usage: npm run -s stillspot -- ${name} ${synopsis} [--json]`;
}

interface ReadFiles {
  readonly plans: readonly Plan[];
  /** File names of the plans, in the same order. */
  readonly names: readonly string[];
  readonly problems: readonly FileProblem[];
  readonly remarks: readonly string[];
}

interface FileProblem {
  readonly file: string;
  /** All problems of the file. */
  readonly text: string;
}

/** Reads every file once, however often it is named. */
function readAll(files: readonly string[]): ReadFiles {
  const read = { plans: [] as Plan[], names: [] as string[], problems: [] as FileProblem[], remarks: [] as string[] };
  const seen = new Set<string>();
  for (const file of files) {
    try {
      const plan = readPlan(file);
      const place = realpathSync(file);
      if (seen.has(place)) continue;
      seen.add(place);
      read.plans.push(plan);
      read.names.push(file);
      const remark = describeFile(plan);
      if (remark) read.remarks.push(`${file}: ${remark}`);
    } catch (error) {
      if (!(error instanceof UnusableError)) throw error;
      read.problems.push({ file, text: error.message });
    }
  }
  return read;
}

/** Problems of one file that are printed; the others are counted. */
const MOST_LISTED = 200;

/** Reads a plan. @throws UnusableError with every problem of the file */
export function readPlan(file: string): Plan {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file));
  } catch (error) {
    throw new UnusableError(`${file}: ${describeFileError(error)}`);
  }
  const result = parsePlan(text);
  if (result.ok) return result.plan;
  const { problems } = result;
  const lines = problems
    .slice(0, MOST_LISTED)
    .map(({ pointer, message }) => `  ${pointer || '(the whole file)'}: ${message}`);
  if (problems.length > MOST_LISTED) lines.push(`  and ${problems.length - MOST_LISTED} more`);
  const count = problems.length === 1 ? '1 problem' : `${problems.length} problems`;
  throw new UnusableError(`${file} is not a usable plan, ${count}:\n${lines.join('\n')}`);
}

function describeFileError(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'there is no such file.';
  if (code === 'EISDIR') return 'this is a folder, not a file.';
  if (code === 'EACCES') return 'this file may not be read.';
  if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA') return 'this is not UTF-8 text.';
  return error instanceof Error ? error.message : String(error);
}

/** Returns a length option in mm, or `fallback` when it is left out. @throws UnusableError unless it is a number ≥ 0 */
export function lengthOption(call: Call, name: string, fallback: number): number {
  const typed = call.options[name];
  if (typed === undefined) return fallback;
  const value = /^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(typed.trim()) ? Number(typed) : Number.NaN;
  if (!Number.isFinite(value)) {
    throw new UnusableError(`--${name} "${typed}" is not a length: give millimeters, for instance --${name} 762.`);
  }
  return value;
}

/** Returns a positive integer option, or `fallback` when it is left out. @throws UnusableError when it is none */
export function countOption(call: Call, name: string, fallback: number): number {
  const typed = call.options[name];
  if (typed === undefined) return fallback;
  if (!/^[1-9]\d{0,5}$/.test(typed.trim())) {
    throw new UnusableError(
      `--${name} "${typed}" is not a count: give a whole number, for instance --${name} ${fallback}.`,
    );
  }
  return Number(typed);
}
