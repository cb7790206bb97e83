import { counted, listed } from '../../geometry/messages/index.ts';
import { writePlan } from '../../geometry/planfile/write.ts';
import { useAppStore } from '../state/store.ts';
import { storeOpenPlan } from '../storage/autosave.ts';
import { freshId } from '../storage/fresh-id.ts';
import { libraryAsFile, type MergeResult, mergePlans } from '../storage/library/backup.ts';
import { troubleInWords } from '../storage/library/database.ts';
import { readLibraryFile } from '../storage/library/library-file.ts';
import { addPlan, sameInLibrary, setTrashed } from '../storage/library/plans.ts';
import { NO_VIEW } from '../storage/library/records.ts';
import { summaryOf } from '../storage/library/summary.ts';
import { showLibraryMessage, useLibrary } from '../storage/library-state.ts';
import { textHash } from '../storage/long-texts.ts';
import { announceLibraryChange } from '../storage/open-plan.ts';
import { downloadFile, type FileProblem, isLibraryFile, readPlanFile, readText } from '../storage/plan-files.ts';
import { openStored } from '../storage/restore.ts';
import { showDialog, usePanels } from './panels.ts';

/** Import of files into the library, and export of the library as one file. */

type ImportedFile =
  | { readonly ok: true; readonly message: string }
  | { readonly ok: false; readonly name: string; readonly problems: readonly FileProblem[] };

/** Imports plans, or files with whole libraries. A file with a problem is refused whole; the others are imported. */
export async function importPlans(files: readonly File[], openLibrary: () => void): Promise<void> {
  const messages: string[] = [];
  const refused: Extract<ImportedFile, { ok: false }>[] = [];
  for (const file of files) {
    const imported = await importFile(file).catch(
      (error: unknown): ImportedFile => ({ ok: true, message: `${file.name}: ${troubleInWords(error)}` }),
    );
    if (imported.ok) messages.push(imported.message);
    else refused.push(imported);
  }
  announceLibraryChange();
  showLibraryMessage(messages.join(' '));
  if (usePanels.getState().dialog?.kind !== 'plans') openLibrary();
  if (refused.length > 0) showRefused(refused);
}

function showRefused(refused: readonly Extract<ImportedFile, { ok: false }>[]): void {
  const [first] = refused;
  if (!first) return;
  const several = refused.length > 1;
  const name = several ? counted(refused.length, 'file') : first.name;
  const problems = refused.flatMap((file) =>
    file.problems.map((problem) => (several ? { ...problem, place: `${file.name}: ${problem.place}` } : problem)),
  );
  showDialog({ kind: 'refused', name, problems, after: 'plans' });
}

async function importFile(file: File): Promise<ImportedFile> {
  return (await isLibraryFile(file)) ? importLibrary(file) : importPlan(file);
}

async function importPlan(file: File): Promise<ImportedFile> {
  const read = await readPlanFile(file);
  if (!read.ok) return read;
  const text = writePlan(read.plan);
  const same = await sameInLibrary(textHash(text));
  if (same) {
    if (same.binnedAt !== null) await setTrashed([same.id], null);
    const where = same.binnedAt === null ? 'was already in Plans' : 'was deleted, and is in Plans again';
    return { ok: true, message: `${file.name} ${where}.` };
  }
  await addPlan({ id: freshId(), text, savedAt: Date.now(), tab: freshId(), view: NO_VIEW }, summaryOf(read.plan));
  return { ok: true, message: `${file.name} is in Plans.` };
}

async function importLibrary(file: File): Promise<ImportedFile> {
  const words = `Reading ${file.name}…`;
  useAppStore.getState().say(words);
  showLibraryMessage(words);
  await timeToShow();
  try {
    return await readLibrary(file);
  } finally {
    if (useAppStore.getState().message === words) useAppStore.getState().say('');
  }
}

/**
 * Resolves when the browser has had time to show the message: 2000 plans keep the page busy for seconds. A timer, because a hidden page has
 * no animation frames.
 */
const timeToShow = () => new Promise((done) => setTimeout(done, 50));

async function readLibrary(file: File): Promise<ImportedFile> {
  const text = await readText(file);
  if (!text.ok) return text;
  const library = readLibraryFile(text.text);
  if (!library.ok) return { ok: false, name: file.name, problems: library.problems };
  const why = await storeOpenPlan();
  if (why) return { ok: true, message: `The open plan is not saved yet, so nothing was imported. ${why}` };
  const imported = await mergePlans(library.plans, Date.now());
  const open = useLibrary.getState().openId;
  if (imported.changedIds.includes(open)) await openStored(open);
  for (const id of imported.changedIds) announceLibraryChange({ id, savedAt: Date.now() });
  return { ok: true, message: importedWords(file.name, imported) };
}

function importedWords(name: string, { counts }: MergeResult): string {
  const parts: readonly (readonly [number, string])[] = [
    [counts.new, 'new'],
    [counts.same, 'already in Plans'],
    [counts['from-bin'], 'restored from the deleted plans'],
    [counts.newer, 'updated, the previous state kept among its earlier versions'],
    [counts.beside, 'changed in both places: added beside the one in Plans'],
  ];
  const words = parts.filter(([count]) => count > 0).map(([count, done]) => `${count} ${done}`);
  return words.length === 0 ? `${name} holds no plans.` : `${name}: ${listed(words)}.`;
}

/** Saves the library with all versions and deleted plans as one file. */
export async function saveLibrary(): Promise<void> {
  try {
    const why = await storeOpenPlan();
    if (why) {
      showLibraryMessage(`The open plan is not saved yet, so it would be missing. ${why}`);
      return;
    }
    const now = new Date();
    const { text, count, leftOut } = await libraryAsFile(now.getTime());
    const two = (part: number) => String(part).padStart(2, '0');
    const name = `stillspot-${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}.plans.json`;
    downloadFile(name, new Blob([text], { type: 'application/json' }));
    const missing = leftOut.length > 0 ? ` Left out, as it could not be read: ${listed(leftOut)}.` : '';
    showLibraryMessage(`${name} with ${counted(count, 'plan')} is in your downloads.${missing}`);
  } catch (error) {
    showLibraryMessage(troubleInWords(error));
  }
}
