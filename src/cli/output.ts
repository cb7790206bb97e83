import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { type Call, UnusableError } from './call.ts';
import type { OutputFile } from './paper/output-file.ts';

/** Returns the path that `--out` names. @throws UnusableError when it is left out */
export function outOption(call: Call, command: string, example: string): string {
  const { out } = call.options;
  if (!out)
    throw new UnusableError(`${command} needs --out and the name of what to write, for instance --out ${example}.`);
  return out;
}

/** Returns the one of `choices` that an option names, or `fallback` when it is left out. @throws UnusableError when it is none */
export function choiceOption<T extends string>(
  call: Pick<Call, 'options'>,
  name: string,
  choices: readonly T[],
  fallback: T,
): T {
  const typed = call.options[name];
  if (typed === undefined) return fallback;
  const found = choices.find((choice) => choice === typed.trim().toLowerCase());
  if (!found) throw new UnusableError(`--${name} "${typed}" is not one of ${choices.join(', ')}.`);
  return found;
}

/** Returns the format by the ending of a file name. @throws UnusableError when it is none of `formats` */
export function formatOf<T extends string>(out: string, formats: readonly T[]): T {
  const ending = extname(out).slice(1).toLowerCase();
  const found = formats.find((format) => format === ending);
  if (!found) {
    const endings = formats.map((format) => `.${format}`).join(', ');
    throw new UnusableError(`--out ${out}: give the file an ending that tells its format: ${endings}.`);
  }
  return found;
}

/** Returns a path in `folder` for each plan file; names that two plans would share are made different. */
export function pathsIn(folder: string, names: readonly string[], ending: string): readonly string[] {
  const stems: string[] = [];
  for (const name of names) {
    let stem = basename(name).replace(/\.plan\.json$|\.json$/, '');
    // Pages after the first are numbered "-2", "-3": the name of a plan must not be that of a page of another plan.
    while (stems.some((other) => isPageOf(stem, other) || isPageOf(other, stem))) stem += '_';
    stems.push(stem);
  }
  return stems.map((stem) => join(folder, `${stem}.${ending}`));
}

/** Whether a stem is equal to another one, or could be a page of it; case is ignored, as some file systems do. */
function isPageOf(stem: string, other: string): boolean {
  const [page, whole] = [stem.toLowerCase(), other.toLowerCase()];
  return page === whole || (page.startsWith(`${whole}-`) && /^\d+$/.test(page.slice(whole.length + 1)));
}

/**
 * Returns why further pages of a picture, which are separate files, must not be written beside `path`. Their number is known only when they
 * are drawn, so every existing file with the name of one of the pages 2 to 99 counts.
 */
export function reasonNotToReplacePages(path: string, force: boolean): readonly string[] {
  if (!existsSync(dirname(path))) return [];
  const ending = extname(path);
  const first = basename(path, ending);
  return readdirSync(dirname(path))
    .filter((name) => extname(name) === ending && /-([2-9]|[1-9]\d)$/.test(basename(name, ending)))
    .filter((name) => isPageOf(basename(name, ending), first))
    .flatMap((name) => reasonNotToReplace(join(dirname(path), name), force));
}

/** Makes a folder, unless it exists. @throws UnusableError when it cannot be made */
export function makeFolder(path: string): void {
  inWords(path, () => mkdirSync(path, { recursive: true }));
}

/**
 * Writes all files, or none if one of them must not be replaced. A plan is never replaced; other files only with `force`.
 * @throws UnusableError with the reason
 */
export function writeFiles(files: readonly OutputFile[], force: boolean): void {
  const barred = files.flatMap(({ path }) => reasonNotToReplace(path, force));
  if (barred.length > 0) throw new UnusableError(barred.join('\n'));
  for (const { path, bytes } of files) {
    const unfinished = `${path}.${process.pid}.unfinished`;
    inWords(path, () => {
      try {
        writeFileSync(unfinished, bytes);
        renameSync(unfinished, path);
      } finally {
        rmSync(unfinished, { force: true });
      }
    });
  }
}

/** Returns why a file must not be written; empty if it may be. */
export function reasonNotToReplace(path: string, force: boolean): readonly string[] {
  if (!existsSync(path)) return [];
  if (statSync(path).isDirectory()) return [`${path}: this is a folder, not a file.`];
  if (isPlanFile(path)) return [`${path}: this is a plan, and a plan is never replaced. Give another name.`];
  return force ? [] : [`${path}: this file is there already. Give another name, or --force to replace it.`];
}

/** Whether a file is a plan: by its name, or by the format name near its beginning. */
function isPlanFile(path: string): boolean {
  if (path.endsWith('.plan.json')) return true;
  const head = Buffer.alloc(4096);
  const file = openSync(path, 'r');
  try {
    return head.toString('utf8', 0, readSync(file, head, 0, head.length, 0)).includes('stillspot-plan');
  } finally {
    closeSync(file);
  }
}

function inWords(path: string, act: () => void): void {
  try {
    act();
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    throw new UnusableError(`${path}: the file could not be written: ${error.message}`);
  }
}
