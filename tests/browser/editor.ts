import type { Page } from 'playwright-core';
import type { Level, XY } from '../../geometry/plan/model.ts';
import { drag, type PagePoint } from './harness.ts';
import { openStage } from './samples.ts';

/** Operates the sheet of an open page in plan coordinates, mm: every press is the browser's own input. */
export interface Editor {
  readonly page: Page;
  /** Returns where a point of the plan is on the page, after the page shows the last change. */
  at(point: XY): Promise<PagePoint>;
  /** Opens a question of the palette and chooses an answer as the tool, by mouse. */
  take(question: string, answer: string): Promise<void>;
  /** Chooses the detector tool, by mouse. */
  takeDetector(): Promise<void>;
  press(x: number, y: number): Promise<void>;
  move(x: number, y: number): Promise<void>;
  pull(from: XY, to: XY): Promise<void>;
  level(): Promise<Level>;
  /** Returns where the first detector is, mm. */
  detectorAt(): Promise<XY>;
  message(): Promise<string>;
  selection(): Promise<readonly string[]>;
  /** Returns the number of steps that can be undone. */
  steps(): Promise<number>;
  /** Returns the large verdict beside the sheet. */
  verdict(): Promise<string>;
}

/** Returns the editor once the page is open, its sheet is drawn, and what comes after that is loaded. */
export async function editorOf(page: Page): Promise<Editor> {
  await page.waitForFunction(() => (window.__stillspot?.store.getState().stageSize.width ?? 0) > 0);
  await page.evaluate(() => window.__stillspot?.started());
  await pressedByHand(page);
  const at = async ([x, y]: XY): Promise<PagePoint> => {
    const point = await page.evaluate(
      async (each) => {
        await window.__stillspot?.painted();
        return window.__stillspot?.toScreen(each.x, each.y);
      },
      { x, y },
    );
    if (!point) throw new Error('the page has no sheet');
    return { x: point[0], y: point[1] };
  };
  const move = async (x: number, y: number) => {
    const point = await at([x, y]);
    await page.mouse.move(point.x, point.y, { steps: 2 });
  };
  const level = async (): Promise<Level> => {
    const found = await page.evaluate(() => {
      const state = window.__stillspot?.store.getState();
      return state?.plan.levels.find(({ id }) => id === state.levelId);
    });
    if (!found) throw new Error('the page shows no level');
    return found;
  };
  return {
    page,
    at,
    move,
    level,
    take: async (question, answer) => {
      await openStage(page, 'Draw');
      const asked = page.getByRole('button', { name: question, exact: true });
      if ((await asked.getAttribute('aria-expanded')) !== 'true') await asked.click();
      await page.locator('.answers').getByRole('button', { name: answer }).first().click();
    },
    takeDetector: async () => {
      await openStage(page, 'Place');
      await page.locator('.answers').getByRole('button', { name: 'Detector' }).first().click();
    },
    press: async (x, y) => {
      await move(x, y);
      await page.mouse.down();
      await page.mouse.up();
    },
    pull: async (from, to) => drag(page, await at(from), await at(to)),
    detectorAt: async () => {
      const [detector] = (await level()).detectors;
      if (!detector) throw new Error('the level has no detector');
      return detector.at;
    },
    message: () => page.evaluate(() => window.__stillspot?.store.getState().message ?? ''),
    selection: () => page.evaluate(() => window.__stillspot?.store.getState().selection ?? []),
    steps: () => page.evaluate(() => window.__stillspot?.store.temporal.getState().pastStates.length ?? 0),
    verdict: async () => (await page.locator('.verdict-panel').getAttribute('data-verdict')) ?? '',
  };
}

/** A test may type "1 1 Enter" as fast as a laser tape. Treats every key press as typed by hand, until the page is reloaded. */
export async function pressedByHand(page: Page): Promise<void> {
  await page.evaluate(() => window.__stillspot?.tape.setState({ gap: -1 }));
}
