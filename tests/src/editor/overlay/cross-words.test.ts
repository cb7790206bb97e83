import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { nearLimit } from '../../../../geometry/check/near-limit.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { Level, Plan, XY } from '../../../../geometry/plan/model.ts';
import { overlap } from '../../../../src/drawing/labels/placer.ts';
import { type Slot, slotAt } from '../../../../src/drawing/labels/slot.ts';
import type { Drawn, textAt } from '../../../../src/drawing/text.ts';
import { measureWords } from '../../../../src/drawing/words.ts';
import { closeLength, openLength } from '../../../../src/editor/lengths/store.ts';
import { drawnCrossWords } from '../../../../src/editor/overlay/cross-words.ts';
import { measuredLines, overlayScene } from '../../../../src/editor/overlay/overlay-scene.ts';
import { clearSketch, putCross, useSketch } from '../../../../src/editor/overlay/sketch.ts';
import { drawnMeasures } from '../../../../src/editor/paint/detectors.ts';
import { planSlot } from '../../../../src/editor/paint/names/overlay-placer.ts';
import { takeStrip } from '../../../../src/editor/paint/note.ts';
import type { Pen } from '../../../../src/editor/paint/pen.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { penAt } from './pen.ts';

const store = useAppStore.getState;
/** The others are the house of the first one. */
const samples = readdirSync('samples').filter((name) => /^0[1-5].*\.plan\.json$/.test(name));
const STAGE = { width: 1000, height: 760 };
/** Px about the drawing. */
const EDGE = 60;
/** Rows and columns of places that the cross is tried at. */
const PLACES = 5;

/** The pen of a stage with the whole level in view. */
function penOn(level: Level): Pen {
  const { minX, minY, maxX, maxY } = levelExtent(level) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const scale = Math.min((STAGE.width - 2 * EDGE) / (maxX - minX), (STAGE.height - 2 * EDGE) / (maxY - minY));
  const view = { scale, x: EDGE - minX * scale, y: EDGE - minY * scale };
  store().setStageSize(STAGE);
  store().setViewport(view);
  return penAt(view, STAGE);
}

/** The ground of a line of words, px: letters are lower than their size. */
const slotOf = (pen: Pen, { text, at, style }: ReturnType<typeof textAt>): Slot =>
  slotAt({ width: pen.measure(text, style), height: 0.8 * style.size }, at);

/** What the words at the cross lie over, in words. */
function hiddenAt(base: Pen, cross: XY): readonly string[] {
  putCross(cross);
  const pen = { ...base };
  const scene = overlayScene(pen);
  const plates: readonly Drawn[] = scene.detectors.flatMap(({ report, chosen }) =>
    report && chosen
      ? drawnMeasures(pen, nearLimit(report), (check) => measureWords(check, store().plan), scene.placer)
      : [],
  );
  for (const line of measuredLines(pen, scene)) takeStrip(scene.placer, line);
  const lines = (drawnCrossWords(pen, scene)?.texts ?? []).map((line) => slotOf(pen, line));
  if (lines.length === 0) throw new Error('the cross says nothing');
  const isOver = (slot: Slot) => lines.some((line) => overlap(slot, line));
  const onPlan = lines.map((line) => planSlot(pen.view, line));
  const labels = scene.names.labels.filter(({ slots }) =>
    slots.some((slot) => onPlan.some((line) => overlap(slot, line))),
  );
  const figures = plates.flatMap(({ texts }) => texts).filter((each) => isOver(slotOf(pen, each)));
  const isOff = ({ x, y, width, height }: Slot) =>
    x < width / 2 || x + width / 2 > STAGE.width || y < height / 2 || y + height / 2 > STAGE.height;
  return [
    ...[...labels.map(({ texts }) => texts), figures].flatMap((texts) => texts.map((each) => each.text)),
    ...(lines.some(isOff) ? ['the edge of the stage'] : []),
  ];
}

describe.each(samples)('with the whole of %s in view', (name) => {
  const plan = JSON.parse(readFileSync(`samples/${name}`, 'utf8')) as Plan;

  it('what Enter does is said beside the cross and over no label, no figure and no edge', () => {
    store().openPlan(plan);
    const troubles: string[] = [];
    for (const level of plan.levels) {
      store().setLevel(level.id);
      const base = penOn(level);
      const { minX, minY, maxX, maxY } = levelExtent(level) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
      // What is near the limits of the detectors is measured beside the cross.
      for (const ids of [[], level.detectors.map(({ id }) => id)]) {
        store().select(ids);
        for (let place = 0; place < PLACES ** 2; place++) {
          const [i, j] = [(place % PLACES) / (PLACES - 1), Math.floor(place / PLACES) / (PLACES - 1)];
          const cross: XY = [minX + (maxX - minX) * i, minY + (maxY - minY) * j];
          const hidden = hiddenAt(base, cross);
          if (hidden.length > 0) troubles.push(`${level.id}, ${ids}, ${cross.map(Math.round)}: ${hidden.join(', ')}`);
        }
      }
    }
    store().select([]);
    clearSketch();
    useSketch.setState({ cross: null });
    expect(troubles).toEqual([]);
  });
});

it('while a length is asked for, its own box says what the keys do', () => {
  store().openPlan(JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as Plan);
  const [level] = store().plan.levels;
  if (!level) throw new Error('the plan has no level');
  const pen = penOn(level);
  putCross([3000, 2000]);
  const words = () => drawnCrossWords(pen, overlayScene({ ...pen }));
  expect(
    words()
      ?.texts.map(({ text }) => text)
      .join(' '),
  ).toBe('Enter lists what can be done here');
  openLength({ of: 'gap', id: 't1', axis: 0 }, false);
  expect(words()).toBeNull();
  closeLength();
  useSketch.setState({ cross: null });
  expect(words()).toBeNull();
});
