import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { checkDetector } from '../../../../geometry/check/check-detector.ts';
import { toneOf } from '../../../../geometry/messages/index.ts';
import type { XY } from '../../../../geometry/plan/model.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { isOverFloor } from '../../../../src/editor/overlay/over-floor.ts';
import { pointerNote } from '../../../../src/editor/overlay/pointer-note.ts';
import { clearSketch, useSketch } from '../../../../src/editor/overlay/sketch.ts';
import { selectLevel, selectModel } from '../../../../src/state/selectors.ts';
import { useAppStore } from '../../../../src/state/store.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the plain basement cannot be read');
const { plan } = read;

const state = useAppStore.getState;
const note = () => pointerNote(state(), useSketch.getState(), state().viewport);

/** Points of the floor on a grid of half a meter, by what a detector there would get. */
function spotsOf(tone: string): readonly XY[] {
  const model = selectModel(state());
  const found: XY[] = [];
  for (const { floorRings } of model.rooms) {
    const points = floorRings.flat();
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    for (let x = Math.min(...xs); x < Math.max(...xs); x += 500) {
      for (let y = Math.min(...ys); y < Math.max(...ys); y += 500) {
        const sample = selectLevel(state()).detectors[0];
        if (!sample) throw new Error('no detector');
        const report = checkDetector(plan, model, { ...sample, at: [x, y] });
        if (report.room && toneOf(report) === tone) found.push([x, y]);
      }
    }
  }
  return found;
}

const hoverAt = (at: XY) => {
  useSketch.setState({ pointer: at });
  state().setHover({ at, id: null });
};

beforeEach(() => {
  state().openPlan(plan);
  clearSketch();
  useSketch.setState({ pointer: null });
});

describe('the note at the pointer', () => {
  it('is none while the pointer is off the sheet', () => {
    expect(note()).toBeNull();
  });

  it('says why no detector may be placed where a rule is broken', () => {
    const [spot] = spotsOf('blocked');
    if (!spot) throw new Error('no blocked spot');
    hoverAt(spot);
    expect(isOverFloor(state(), state().hover)).toBe(true);
    expect(note()?.lines.length).toBeGreaterThan(0);
    expect(note()?.verdict).toBeNull();
  });

  it('shows lengths of what is being drawn before anything else', () => {
    hoverAt([1000, 1000]);
    useSketch.setState({ reading: ['12 ft', '90°'] });
    expect(note()?.lines).toEqual(['12 ft', '90°']);
  });

  it('has the verdict of a detector that is dragged, at the detector', () => {
    const [one] = selectLevel(state()).detectors;
    if (!one) throw new Error('no detector');
    useAppStore.setState({ draggedDetector: { id: one.id, at: one.at, base: one.base, byTouch: true } });
    const shown = note();
    expect(shown?.verdict?.word).toMatch(/^[A-Z]/);
    expect(shown?.byTouch).toBe(true);
    useAppStore.setState({ draggedDetector: null });
  });
});
