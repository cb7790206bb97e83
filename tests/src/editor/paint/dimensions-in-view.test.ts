import { describe, expect, it, vi } from 'vitest';
import { selectNamed } from '../../../../src/editor/named.ts';
import { sheetNames } from '../../../../src/editor/paint/names/sheet-names.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { toScreen } from '../../../../src/state/viewport.ts';
import { someOf } from '../../../helpers/how-many.ts';
import { penInView } from '../../../helpers/pen-in-view.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';

const target = vi.hoisted(() => ({ px: 24 }));
vi.mock('../../../../src/theme/target-size.ts', () => ({
  minTargetPx: () => target.px,
  dimensionStepPx: () => target.px + 2,
}));

const store = useAppStore.getState;
/** What is left for the sheet on phones both ways up, tablets and a desk; the target of a finger, and of a mouse, px. */
const STAGES = [
  [320, 420, 44],
  [360, 520, 44],
  [390, 620, 44],
  [844, 240, 44],
  [768, 560, 44],
  [820, 900, 44],
  [320, 420, 24],
  [720, 330, 24],
  [1040, 760, 24],
] as const;

/** The lengths that reach off the stage, px beyond it. */
function offStage(width: number, height: number): readonly string[] {
  const pen = penInView(width, height);
  return sheetNames(pen, selectNamed(store())).dimensions.flatMap(({ slots: [slot], texts: [text] }) => {
    if (!slot || !text) return [];
    const [x, y] = toScreen(pen.view, [slot.x, slot.y]);
    const turned = Math.abs(Math.sin(slot.turn)) > 0.5;
    const [wide, high] = turned ? [slot.height, slot.width] : [slot.width, slot.height];
    const [dx, dy] = [(wide / 2) * pen.view.scale, (high / 2) * pen.view.scale];
    const beyond = Math.max(dx - x, dy - y, x + dx - width, y + dy - height);
    return beyond > 0 ? [`${text.text}: ${beyond.toFixed(0)} px`] : [];
  });
}

describe.each(someOf(SAMPLE_NAMES, 4))('the whole of %s on the screen', (name) => {
  it.each(STAGES)('shows all lengths that it writes, on a stage of %d by %d, targets of %d', (width, height, px) => {
    target.px = px;
    const plan = samplePlan(name);
    store().openPlan(plan);
    store().setStageSize({ width, height });
    const troubles = plan.levels.flatMap(({ id, name: level }) => {
      store().setLevel(id);
      store().fit();
      return offStage(width, height).map((trouble) => `${level}: ${trouble}`);
    });
    expect(troubles).toEqual([]);
  });
});

it.each(STAGES.slice(0, 3))('the outermost lengths are among them on a phone of %d by %d', (width, height, px) => {
  target.px = px;
  store().openPlan(samplePlan('01-plain-basement'));
  store().setStageSize({ width, height });
  store().fit();
  const texts = sheetNames(penInView(width, height), selectNamed(store())).dimensions.map(
    ({ texts: [text] }) => text?.text,
  );
  expect(texts).toEqual(expect.arrayContaining(['24 ft', '20 ft 9 3/4 in']));
});
