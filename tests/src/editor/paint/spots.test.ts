import { afterEach, describe, expect, it } from 'vitest';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import { USUAL_DETECTOR } from '../../../../geometry/plan/items.ts';
import type { Level, Plan } from '../../../../geometry/plan/model.ts';
import { bestSpots } from '../../../../geometry/search/best-spots.ts';
import { overlap } from '../../../../src/drawing/labels/placer.ts';
import { type Slot, slotAt } from '../../../../src/drawing/labels/slot.ts';
import { overlayScene } from '../../../../src/editor/overlay/overlay-scene.ts';
import { planSlot } from '../../../../src/editor/paint/names/overlay-placer.ts';
import { drawnMarks } from '../../../../src/editor/paint/spots.ts';
import { useShown } from '../../../../src/state/shown.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { penInView } from '../../../helpers/pen-in-view.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';

const store = useAppStore.getState;
const STAGES = [
  [390, 620],
  [576, 890],
  [1040, 760],
] as const;
/** The tag beside a cross, px. */
const TAG = { width: 19, height: 19 };

/** Marks the good places of the level in view and returns what is drawn of them and what is written below, in mm of the plan. */
function marked(plan: Plan, level: Level, width: number, height: number) {
  store().setLevel(level.id);
  store().fit();
  const found = bestSpots(plan, buildLevel(level), USUAL_DETECTOR).slice(0, 5);
  const spots = found.map(({ at }, i) => ({ name: `${i + 1}`, axes: [at], radius: 50.8, limit: null }));
  useShown.setState({ levelId: level.id, spots });
  const pen = penInView(width, height);
  const { names, placer, discs } = overlayScene(pen);
  const tags = drawnMarks(pen, level.id, () => '', placer)
    .flatMap(({ texts }) => texts)
    .map(({ text, at }) => ({ text, slot: planSlot(pen.view, slotAt(TAG, at)) }));
  expect(tags.map(({ text }) => text)).toEqual(spots.map(({ name }) => name));
  const symbols = discs.map(({ at, radius }) =>
    planSlot(pen.view, slotAt({ width: 1.8 * radius, height: 1.8 * radius }, at)),
  );
  return { names, tags, symbols };
}

const hides = (slots: readonly Slot[], { slot }: { readonly slot: Slot }) => slots.some((each) => overlap(each, slot));

afterEach(() => useShown.setState({ levelId: '', spots: [] }));

describe.each(SAMPLE_NAMES)('the good places of %s', (name) => {
  it.each(STAGES)('have tags that hide no name, on a stage of %d by %d', (width, height) => {
    const sample = samplePlan(name);
    // Before a detector is placed: beside one, its symbol and words come first.
    const plan = { ...sample, levels: sample.levels.map((level) => ({ ...level, detectors: [] })) };
    store().openPlan(plan);
    store().setStageSize({ width, height });
    const troubles = plan.levels.flatMap((level) => {
      const { names, tags } = marked(plan, level, width, height);
      return names.labels.flatMap(({ slots, texts }) =>
        tags
          .filter((tag) => hides(slots, tag))
          .map(({ text }) => `${level.name}: ${text} hides ${texts.map((each) => each.text).join(' ')}`),
      );
    });
    expect(troubles).toEqual([]);
  });

  it.each(STAGES)(
    'leave each detector its name, and no symbol hides a tag, on a stage of %d by %d',
    (width, height) => {
      const plan = samplePlan(name);
      store().openPlan(plan);
      store().setStageSize({ width, height });
      const troubles = plan.levels.flatMap((level) => {
        const { names, tags, symbols } = marked(plan, level, width, height);
        const without = level.detectors
          .filter(({ id }) => !names.tags.has(id))
          .map(({ label }) => `${label} has no name`);
        return [
          ...without,
          ...tags.filter((tag) => hides(symbols, tag)).map(({ text }) => `${text} lies under a symbol`),
        ];
      });
      expect(troubles).toEqual([]);
    },
  );
});
