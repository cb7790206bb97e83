import type { Call } from '../call.ts';
import type { OutputFile } from './output-file.ts';

/** The job for one plan; plain data, so that another thread can do it. */
export interface PaperJob {
  readonly command: string;
  readonly file: string;
  readonly path: string;
  readonly format: string;
  readonly options: Call['options'];
  readonly force: boolean;
}

/** The result of a command for one plan. */
export interface MadePaper {
  readonly files: readonly OutputFile[];
  /** Letters that the font of the pages does not have. */
  readonly lacking: readonly string[];
  /** Whether no verdict is blocked or unknown. */
  readonly fine: boolean;
  /** Printed below the names of the files. */
  readonly notes: readonly string[];
  /** Printed with `--json` beside the names of the files. */
  readonly document: object;
}

/** A job that is done, or its problem: of the call or the file, or, if `fault`, of Stillspot itself. */
export type JobResult =
  | { readonly ok: true; readonly files: readonly string[]; readonly rest: Omit<MadePaper, 'files'> }
  | { readonly ok: false; readonly problem: string; readonly fault: boolean };

/** Returns the result of a job in which Stillspot itself failed. */
export function failedJob({ file }: PaperJob, error: unknown): JobResult {
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return {
    ok: false,
    problem: `${file}: Stillspot itself failed on this plan. Please report this:\n${trace}`,
    fault: true,
  };
}
