import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { writePlan } from '../../geometry/planfile/write.ts';

/** A problem in a file: its place, what was found, what was expected. */
export interface FileProblem {
  readonly place: string;
  readonly found: string;
  readonly expected: string;
}
interface Refused {
  readonly ok: false;
  readonly name: string;
  readonly problems: readonly FileProblem[];
}
export type OpenedFile = { readonly ok: true; readonly plan: Plan } | Refused;

/** Maximum size of a plan file, bytes: no plan of a house is larger; a photograph picked by mistake often is. */
export const LARGEST_PLAN_FILE = 20_000_000;

/** Returns whether a file begins as a library file and not as one plan. It may still be damaged. */
export async function isLibraryFile(file: File): Promise<boolean> {
  try {
    return /^\uFEFF?\s*\{\s*"format"\s*:\s*"stillspot-shelf"/.test(await file.slice(0, 400).text());
  } catch {
    return false; // reading it as a plan then reports the problem
  }
}

/** Reads a plan file. Returns every problem if it is not valid. Does not change the open plan. */
export async function readPlanFile(file: File): Promise<OpenedFile> {
  if (file.size > LARGEST_PLAN_FILE) {
    return refused(file, `${Math.round(file.size / 1e6)} MB`, 'a plan file, of less than 20 MB');
  }
  const read = await readText(file);
  return read.ok ? readPlanText(read.text, file.name) : read;
}

/** Returns the text of a file of any size; refused if the browser may not read it. */
export async function readText(file: File): Promise<{ readonly ok: true; readonly text: string } | Refused> {
  try {
    return { ok: true, text: await file.text() };
  } catch {
    return refused(file, 'a file that the browser may not read', 'a file on this computer that can be opened');
  }
}

function refused({ name }: File, found: string, expected: string): Refused {
  return { ok: false, name, problems: [{ place: 'the whole file', found, expected }] };
}

export function readPlanText(text: string, name: string): OpenedFile {
  const read = parsePlan(text);
  if (read.ok) return { ok: true, plan: read.plan };
  return {
    ok: false,
    name,
    problems: read.problems.map(({ pointer, found, expected }) => ({
      place: pointer || 'the whole file',
      found: String(found),
      expected: String(expected),
    })),
  };
}

/** The file that the user has allowed this page to write to, used for later saves. Reset when another plan opens. */
let place: FileSystemFileHandle | null = null;

export function forgetPlace(): void {
  place = null;
}

interface SavePicker {
  showSaveFilePicker(options: object): Promise<FileSystemFileHandle>;
}

/** Returns whether this browser lets a page write to a place that the user picks. */
export function canPickPlace(): boolean {
  return 'showSaveFilePicker' in window;
}

export type SaveResult =
  | { readonly ok: true; readonly name: string; readonly how: 'downloaded' | 'written' }
  | { readonly ok: false; readonly reason: string };

/** Writes the plan to the picked place if there is one, otherwise downloads it. */
export async function savePlanFile(plan: Plan): Promise<SaveResult> {
  if (!place) {
    const name = planFileName(plan.title);
    downloadFile(name, new Blob([writePlan(plan)], { type: 'application/json' }));
    return { ok: true, name, how: 'downloaded' };
  }
  const { name } = place;
  try {
    const stream = await place.createWritable();
    await stream.write(writePlan(plan));
    await stream.close();
    return { ok: true, name, how: 'written' };
  } catch {
    place = null;
    return {
      ok: false,
      reason: `"${name}" could not be written: it was moved, locked, or not allowed. Press Save again to download it.`,
    };
  }
}

/** Lets the user pick the place, then saves there. Returns null if the user cancels. */
export async function savePlanTo(plan: Plan): Promise<SaveResult | null> {
  try {
    // Not in every browser, so not in the DOM types: check `canPickPlace` first.
    place = await (window as unknown as SavePicker).showSaveFilePicker({
      suggestedName: planFileName(plan.title),
      types: [{ description: 'Plan', accept: { 'application/json': ['.json'] } }],
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    return { ok: false, reason: 'The browser did not let the page write there. Press Save to download the plan.' };
  }
  return savePlanFile(plan);
}

/** "Alder Court, lower level" → "alder-court-lower-level.plan.json"; "plan.plan.json" without a title. */
export function planFileName(title: string): string {
  return `${fileStem(title)}.plan.json`;
}

export function fileStem(title: string): string {
  const stem = title
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80);
  return stem || 'plan';
}

/** Downloads a file. The object URL is revoked later: the browser may still be reading it. */
export function downloadFile(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
