import { readFileSync } from 'node:fs';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import type { Editor } from './editor.ts';
import { settled } from './harness.ts';

export const sample = JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as Plan;
export const sampleLevel = sample.levels[0] as Level;
export const FURNACE = sampleLevel.fixtures.find(({ kind }) => kind === 'furnace')?.id ?? '';
export const SUMP = sampleLevel.fixtures.find(({ kind }) => kind === 'sump-pit')?.id ?? '';
export const DESK = sampleLevel.objects.find(({ name }) => name === 'Desk')?.id ?? '';
export const WALL = sampleLevel.walls[0]?.id ?? '';
export const WINDOW = sampleLevel.openings.find(({ kind }) => kind === 'window')?.id ?? '';
/** White floor of the family room, without items. */
export const WHITE: XY = [3500, 2200];

/** Shows the plain basement on the sheet, with nothing selected and nothing focused. */
export async function freshSample({ page }: Editor): Promise<void> {
  await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
}

export async function pressKeys({ page }: Editor, pressed: readonly string[]): Promise<void> {
  for (const key of pressed) await page.keyboard.press(key);
}

export async function selectIds({ page }: Editor, ids: readonly string[]): Promise<void> {
  await page.evaluate((each) => window.__stillspot?.store.getState().select(each), ids);
}

export const toolOf = ({ page }: Editor) => page.evaluate(() => window.__stillspot?.store.getState().tool.kind);

/** Chooses a command from the list that the button below the sheet opens. */
export async function chooseAct({ page }: Editor, name: string): Promise<void> {
  await page.getByRole('button', { name: 'More…' }).last().click();
  await page.getByRole('menuitem', { name }).click();
  await page.getByRole('menu').waitFor({ state: 'detached' });
  // The command has been executed when the list has closed.
  await settled(page);
}

export function middleOf(level: Level, id: string): XY {
  const thing = [...level.fixtures, ...level.objects].find((each) => each.id === id);
  if (!thing || 'polygon' in thing.shape) throw new Error(`nothing with a middle is called ${id}`);
  return 'box' in thing.shape ? thing.shape.box.center : thing.shape.circle.center;
}
