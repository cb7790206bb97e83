import type { Level, Plan } from '../../geometry/plan/model.ts';
import { writePlan } from '../engine.ts';
import { putOnShelf } from '../io/cabinet.ts';
import {
  forgetPlace,
  type OpenedFile,
  readPlanFile,
  readPlanText,
  type SaveResult,
  savePlanFile,
  savePlanTo,
} from '../io/plan-files.ts';
import type { Sample } from '../io/samples.ts';
import { useAppStore } from '../state/store.ts';
import { openStage, showDialog, unfold } from './ui.ts';

/** What the buttons of the top bar do. */

const say = (message: string): void => useAppStore.getState().say(message);

/** Puts the open plan on the shelf, so that nothing drawn is lost when another takes its place. */
async function shelve(): Promise<void> {
  const { plan } = useAppStore.getState();
  if (!hasWork(plan)) return;
  const kept = await putOnShelf({ title: plan.title, text: writePlan(plan), putAwayAt: Date.now(), readable: true });
  if (!kept)
    say('The plan before could not be put aside. Undo does not bring it back, so save it as a file next time.');
}

/** Whether there is anything that one would miss. */
function hasWork(plan: Plan): boolean {
  return (
    plan.title.trim() !== '' ||
    plan.levels.some(({ walls, rooms, fixtures, objects, detectors }) =>
      [walls, rooms, fixtures, objects, detectors].some((items) => items.length > 0),
    )
  );
}

export async function newSheet(): Promise<void> {
  useAppStore.getState().endChain();
  const had = hasWork(useAppStore.getState().plan);
  await shelve();
  forgetPlace();
  useAppStore.getState().newPlan();
  openStage('draw');
  unfold('job');
  if (had) say('A new sheet. The plan before lies under Earlier.');
}

/** Takes a file that was picked or dropped. What is refused leaves everything as it is. */
export async function openFile(file: File): Promise<void> {
  await show(await readPlanFile(file), `${file.name} is open.`);
}

export async function openSample(sample: Sample): Promise<void> {
  await show(
    readPlanText(await sample.load(), sample.title),
    `${sample.title}: an invented house. Change what you like.`,
  );
}

export async function openEarlier(text: string, title: string): Promise<void> {
  await show(readPlanText(text, title), `${title || 'The plan without a title'} is back.`);
}

async function show(opened: OpenedFile, message: string): Promise<void> {
  if (!opened.ok) {
    showDialog({ kind: 'refused', name: opened.name, problems: opened.problems });
    return;
  }
  useAppStore.getState().endChain();
  await shelve();
  forgetPlace();
  useAppStore.getState().openPlan(opened.plan);
  const level = firstToShow(opened.plan);
  if (level) useAppStore.getState().setLevel(level.id);
  showDialog(null);
  const placed = opened.plan.levels.some(({ detectors }) => detectors.length > 0);
  openStage(placed ? 'place' : 'draw');
  unfold(placed ? 'side' : 'job');
  say(message);
}

/** The first level with a detector, else the first that somebody lives in or could, else the first. */
function firstToShow({ levels }: Plan): Level | undefined {
  return (
    levels.find(({ detectors }) => detectors.length > 0) ?? levels.find(({ living }) => living !== 'no') ?? levels[0]
  );
}

export async function saveFile(): Promise<void> {
  report(await savePlanFile(useAppStore.getState().plan));
}

export async function saveFileTo(): Promise<void> {
  const result = await savePlanTo(useAppStore.getState().plan);
  if (result) report(result);
}

function report(result: SaveResult): void {
  if (!result.ok) say(result.reason);
  else if (result.how === 'written') say(`Written to ${result.name}.`);
  else say(`${result.name} is in your downloads.`);
}
