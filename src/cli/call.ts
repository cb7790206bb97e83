import { readFileSync, realpathSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';

/** The call or a file is not usable: exit code 2, the message on standard error. */
export class UnusableError extends Error {}

/** A call that was understood, its file read. */
export interface Call {
  readonly file: string;
  readonly plan: Plan;
  /** All files that were named, in their order; more than one only where the command takes many. */
  readonly plans: readonly Plan[];
  readonly json: boolean;
  /** The other options as typed, by name. */
  readonly options: Readonly<Record<string, string | undefined>>;
  /** Names of the options without a value that were given. */
  readonly flags: ReadonlySet<string>;
}

export interface Command {
  readonly name: string;
  /** What follows the name in the usage, e.g. "FILE [--base MM]". */
  readonly form: string;
  readonly does: string;
  /** Whether it takes more than one file. */
  readonly many?: boolean;
  /** Names of options that take a value. */
  readonly options: readonly string[];
  /** Names of options that take none. */
  readonly flags?: readonly string[];
  readonly run: (call: Call) => { text: string; code: 0 | 1 };
}

/**
 * Reads arguments and the plan file.
 * @throws UnusableError with every problem of the call or of the file
 */
export function readCall(command: Command, argv: readonly string[]): Call {
  const { values, positionals } = understood(command, argv);
  const [file, ...more] = positionals;
  if (file === undefined) throw new UnusableError(`No file is named. ${usageOf(command)}`);
  if (more.length > 0 && !command.many)
    throw new UnusableError(`${command.name} takes one file, got ${positionals.length}. ${usageOf(command)}`);
  const flags = new Set<string>();
  const options: Record<string, string> = {};
  for (const [key, value] of Object.entries(values)) {
    if (value === true) flags.add(key);
    else if (typeof value === 'string') options[key] = value;
  }
  const plans = readAll(positionals);
  return { file, plan: plans[0] as Plan, plans, json: flags.has('json'), options, flags };
}

function understood(command: Command, argv: readonly string[]) {
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

function usageOf({ name, form }: Command): string {
  return `Usage: npm run -s stillspot -- ${name} ${form} [--json]`;
}

/** Every file once, however often it is named, or the troubles of all that cannot be used. */
function readAll(files: readonly string[]): readonly Plan[] {
  const troubles: string[] = [];
  const seen = new Set<string>();
  const plans = files.flatMap((file) => {
    try {
      const plan = readPlan(file);
      const place = realpathSync(file);
      if (seen.has(place)) return [];
      seen.add(place);
      return [plan];
    } catch (error) {
      if (!(error instanceof UnusableError)) throw error;
      troubles.push(error.message);
      return [];
    }
  });
  if (troubles.length > 0) throw new UnusableError(troubles.join('\n'));
  return plans;
}

function readPlan(file: string): Plan {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file));
  } catch (error) {
    throw new UnusableError(`${file}: ${fileTrouble(error)}`);
  }
  const result = parsePlan(text);
  if (result.ok) return result.plan;
  const lines = result.problems.map(({ pointer, message }) => `  ${pointer || '(the whole file)'}: ${message}`);
  const count = lines.length === 1 ? '1 problem' : `${lines.length} problems`;
  throw new UnusableError(`${file} is not a usable plan, ${count}:\n${lines.join('\n')}`);
}

function fileTrouble(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'there is no such file.';
  if (code === 'EISDIR') return 'this is a folder, not a file.';
  if (code === 'EACCES') return 'this file may not be read.';
  if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA') return 'this is not UTF-8 text.';
  return error instanceof Error ? error.message : String(error);
}

/** A length option in mm, or the fallback when it is left out. @throws UnusableError when it is no number ≥ 0 */
export function lengthOption(call: Call, name: string, fallback: number): number {
  const typed = call.options[name];
  if (typed === undefined) return fallback;
  const value = typed.trim() === '' ? Number.NaN : Number(typed);
  if (!Number.isFinite(value) || value < 0) {
    throw new UnusableError(`--${name} "${typed}" is not a length: give millimeters, for instance --${name} 762.`);
  }
  return value;
}

/** A whole number of 1 or more, or the fallback when it is left out. @throws UnusableError when it is none */
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
