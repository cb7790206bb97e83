import { afterEach, describe, expect, it } from 'vitest';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import { USUAL_DETECTOR } from '../../../../geometry/plan/items.ts';
import { bestSpots } from '../../../../geometry/search/best-spots.ts';
import { overlap } from '../../../../src/drawing/labels/placer.ts';
import { slotAt } from '../../../../src/drawing/labels/slot.ts';
import { selectNamed } from '../../../../src/editor/named.ts';
import { overlayPlacer, planSlot } from '../../../../src/editor/paint/names/overlay-placer.ts';
import { sheetNames } from '../../../../src/editor/paint/names/sheet-names.ts';
import type { Pen } from '../../../../src/editor/paint/pen.ts';
import { drawnMarks } from '../../../../src/editor/paint/spots.ts';
import { useShown } from '../../../../src/state/shown.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { THEMES } from '../../../../src/theme/tokens.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';

const store = useAppStore.getState;
const STAGES = [
  [390, 620],
  [576, 890],
  [1040, 760],
] as const;
/** The tag beside a cross, px. */
const TAG = { width: 19, height: 19 };

/** A pen for what is in view, with letters of a middling width. */
const penOf = (width: number, height: number): Pen => ({
  ctx: null as never,
  view: store().viewport,
  measure: (text, { size }) => text.length * size * 0.55,
  theme: THEMES.paper,
  unit: store().plan.display.length,
  ratio: 1,
  area: { left: 0, top: 0, right: width, bottom: height },
  seen: { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 },
});

/** Returns the names of the sheet that the tags of the good places hide. */
function hidden(width: number, height: number): readonly string[] {
  const { id } = store().plan.levels.find((level) => level.id === store().levelId) ?? { id: '' };
  const pen = penOf(width, height);
  const names = sheetNames(pen, selectNamed(store()));
  const tags = drawnMarks(pen, id, () => '', overlayPlacer(names.placer, pen.view, { width, height }))
    .flatMap(({ texts }) => texts)
    .map(({ text, at }) => ({ text, slot: planSlot(pen.view, slotAt(TAG, at)) }));
  expect(tags.map(({ text }) => text)).toEqual(useShown.getState().spots.map(({ name }) => name));
  return names.labels.flatMap(({ slots, texts }) =>
    tags
      .filter(({ slot }) => slots.some((taken) => overlap(taken, slot)))
      .map(({ text }) => `${text} hides ${texts.map((each) => each.text).join(' ')}`),
  );
}

afterEach(() => useShown.setState({ levelId: '', spots: [] }));

describe.each(SAMPLE_NAMES)('the good places of %s', (name) => {
  it.each(STAGES)('have tags that hide no name, on a stage of %d by %d', (width, height) => {
    const sample = samplePlan(name);
    // Before a detector is placed: beside one, its symbol and words come first.
    const plan = { ...sample, levels: sample.levels.map((level) => ({ ...level, detectors: [] })) };
    store().openPlan(plan);
    store().setStageSize({ width, height });
    const troubles = plan.levels.flatMap((level) => {
      store().setLevel(level.id);
      store().fit();
      const found = bestSpots(plan, buildLevel(level), USUAL_DETECTOR);
      const spots = found.slice(0, 5).map(({ at }, i) => ({ name: `${i + 1}`, axes: [at], radius: 50.8, limit: null }));
      useShown.setState({ levelId: level.id, spots });
      return hidden(width, height).map((trouble) => `${level.name}: ${trouble}`);
    });
    expect(troubles).toEqual([]);
  });
});
