import type { Call } from '../call.ts';
import type { OutputFile } from './output-file.ts';

/** What is asked for one plan; plain data, so that another thread can do it. */
export interface PaperJob {
  readonly command: string;
  readonly file: string;
  readonly path: string;
  readonly format: string;
  readonly options: Call['options'];
  readonly force: boolean;
}

/** What a command makes of one plan. */
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

/** A job that is done, or what was wrong with it. */
export type JobResult =
  | { readonly ok: true; readonly files: readonly string[]; readonly rest: Omit<MadePaper, 'files'> }
  | { readonly ok: false; readonly problem: string };
