import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../geometry/plan/model.ts';
import { isLongRun } from '../helpers/how-many.ts';
import { TAPE_FORMS } from '../src/editor/tape/forms.ts';
import { editorOf } from './editor.ts';
import { DESK, sample, sampleLevel, WALL } from './hands.ts';
import { type OpenPage, openPage } from './harness.ts';

/** Times between two keys, ms: tapes take 1 to 30 (common practice, no published source). */
const SPEEDS = [1, 12, 30] as const;

const NOTHING = { walls: [], openings: [], rooms: [], fixtures: [], objects: [], detectors: [] } as const;
/** The four exterior walls of the sample alone. */
const fourWalls: Plan = {
  ...sample,
  levels: [{ ...sampleLevel, ...NOTHING, walls: sampleLevel.walls.slice(0, 4) }],
};

/**
 * Every form that a laser tape types, wherever the focus may be, at three speeds, by the browser's own key presses. The clock of the page
 * is stopped except for the time between two keys, so that the machine's own speed does not matter.
 */
describe('a laser tape that types, by form, situation and speed', () => {
  let open: OpenPage;

  beforeAll(async () => {
    open = await openPage();
    const { page } = open;
    await page.clock.install();
    await page.reload();
    await editorOf(page);
    await page.waitForFunction(() => window.__stillspot?.tape.getState().ready);
    await page.evaluate(() => window.__stillspot?.tape.setState({ gap: 40 }));
    await page.clock.pauseAt(Date.now() + 60_000);
  });

  /** Opens a plan again, with one item selected, and waits until it is painted. */
  const begin = async (plan: Plan, selected: readonly string[]) => {
    await open.page.evaluate(
      ({ plan: each, ids }) => {
        const state = window.__stillspot?.store.getState();
        window.__stillspot?.tape.setState({ reading: null });
        state?.openPlan(each);
        state?.select(ids);
        document.getElementById('sheet-of-plan')?.focus();
      },
      { plan, ids: selected },
    );
    await open.page.clock.runFor(100);
  };
  const tape = async (text: string, every: number) => {
    for (const key of [...text, 'Enter']) {
      await open.page.keyboard.press(key);
      await open.page.clock.runFor(every);
    }
    await open.page.clock.runFor(100);
  };
  const found = () =>
    open.page.evaluate(() => {
      const { plan, tool, chain, selection } = window.__stillspot?.store.getState() ?? {};
      return { plan, tool: tool?.kind, chain, selection, reading: window.__stillspot?.tape.getState().reading };
    });
  /** In the usual run every form in one of four situations, at one of the speeds in turn; in the long run all. */
  const casesOf = (situation: number) =>
    TAPE_FORMS.flatMap(([text, mm], form) =>
      isLongRun || form % 4 === situation % 4
        ? SPEEDS.filter((_, i) => isLongRun || i === form % SPEEDS.length).map((every) => ({ text, mm, every }))
        : [],
    );

  it('with nothing asked: no tool, no edit, and the length is read back', async () => {
    for (const { text, every } of casesOf(1)) {
      await begin(sample, [DESK]);
      const before = await found();
      await tape(text, every);
      const { reading, ...others } = await found();
      expect({ ...others, reading: null }, `${text} each ${every} ms`).toEqual(before);
      expect(reading, `${text} each ${every} ms`).toMatchObject({ kind: 'length', text });
    }
  });

  it('while a wall is drawn: it is as long as the tape says, and the tool stays', async () => {
    for (const { text, mm, every } of casesOf(2)) {
      await begin({ ...fourWalls, levels: [{ ...sampleLevel, ...NOTHING }] }, []);
      await open.page.evaluate(() => {
        const state = window.__stillspot?.store.getState();
        state?.setTool({ kind: 'wall' });
        state?.setChain({ corners: [[0, 0]], takenBack: [] });
      });
      await open.page.clock.runFor(100);
      await open.page.keyboard.press('ArrowRight');
      await open.page.clock.runFor(100);
      const before = await found();
      await tape(text, every);
      const { chain, tool, reading } = await found();
      const what = `${text} each ${every} ms`;
      expect(tool, what).toBe(before.tool);
      expect(reading, what).toBeNull();
      expect(chain?.corners, what).toHaveLength(2);
      expect(Math.hypot(...(chain?.corners[1] ?? [])), what).toBeCloseTo(mm, 3);
    }
  });

  it('in the length of a wall that is asked for on the plan: that wall, no tool, nothing else', async () => {
    for (const { text, mm, every } of casesOf(3)) {
      await begin(fourWalls, [WALL]);
      await open.page.keyboard.press('l');
      await open.page.clock.runFor(100);
      const field = open.page.locator('.typed-length input');
      await field.waitFor();
      const before = await found();
      await tape(text, every);
      const what = `${text} each ${every} ms`;
      const { plan, tool, reading } = await found();
      expect(tool, what).toBe('select');
      expect(reading, what).toBeNull();
      // Accepted, or refused at the field with the typed text in it: a wall of 7 in leaves no room.
      if (JSON.stringify(plan) === JSON.stringify(before.plan)) {
        expect(await field.inputValue(), what).toBe(text);
        expect(await field.getAttribute('aria-invalid'), what).toBe('true');
        continue;
      }
      const inside = plan?.levels[0]?.walls.map(
        ({ from, to, thickness }) => Math.hypot(to[0] - from[0], to[1] - from[1]) - thickness,
      );
      expect(inside?.filter((each) => Math.abs(each - mm) < 0.01).length, `${what}: ${inside}`).toBe(2);
    }
  });

  it('in a field of the panel: its length, no tool, and the next field has the keyboard', async () => {
    const field = open.page.getByRole('textbox', { name: 'Width', exact: true });
    for (const { text, mm, every } of casesOf(4)) {
      await begin(sample, [DESK]);
      await field.focus();
      await tape(text, every);
      const what = `${text} each ${every} ms`;
      const { plan, tool, reading } = await found();
      const desk = plan?.levels[0]?.objects.find(({ id }) => id === DESK);
      expect(desk && 'box' in desk.shape && desk.shape.box.width, what).toBeCloseTo(mm, 3);
      expect(tool, what).toBe('select');
      expect(reading, what).toBeNull();
      expect(await open.page.evaluate(() => document.activeElement?.matches('input[data-length]')), what).toBe(true);
    }
    open.expectNoTroubles();
  });
});
