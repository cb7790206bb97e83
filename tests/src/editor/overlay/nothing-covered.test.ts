import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { nearLimit } from '../../../../geometry/check/near-limit.ts';
import { ITEM_LISTS } from '../../../../geometry/edit/listed-items.ts';
import type { Plan, XY } from '../../../../geometry/plan/model.ts';
import { distance, nearestOnSegment } from '../../../../geometry/plane/point.ts';
import type { Line } from '../../../../geometry/plane/types.ts';
import { edgeToward } from '../../../../src/drawing/labels/slot.ts';
import type { Drawn } from '../../../../src/drawing/text.ts';
import { measureWords } from '../../../../src/drawing/words.ts';
import { figuresOn } from '../../../../src/editor/lengths/figures.ts';
import { drawnFigures } from '../../../../src/editor/lengths/paint-figures.ts';
import { overlayScene } from '../../../../src/editor/overlay/overlay-scene.ts';
import { drawnMeasures } from '../../../../src/editor/paint/detectors.ts';
import { px } from '../../../../src/editor/paint/pen.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { someOf } from '../../../helpers/how-many.ts';
import { penAt } from './pen.ts';

const store = useAppStore.getState;
/** Px for a mm: a street, a phone, a tablet, a desk, a corner of a room. */
const SCALES = [0.008, 0.015, 0.025, 0.035, 0.05, 0.07, 0.1, 0.15, 0.25, 0.5, 1.2];
const STAGE = { width: 820, height: 700 };
const samples = readdirSync('samples').filter((name) => name.endsWith('.plan.json'));

interface Plate {
  readonly at: XY;
  readonly width: number;
  readonly height: number;
}
const covers = ({ at: [x, y], width, height }: Plate, [a, b]: XY) =>
  Math.abs(a - x) < width / 2 && Math.abs(b - y) < height / 2;
/** From a plate to a point; 0 within. */
const gap = ({ at: [x, y], width, height }: Plate, [a, b]: XY) =>
  Math.hypot(Math.max(0, Math.abs(a - x) - width / 2), Math.max(0, Math.abs(b - y) - height / 2));

/** Whether a plate stands so far off its line that nobody can tell which line it is of. */
function isFarOff(plate: Plate, [a, b]: Line): boolean {
  const { at: middle, width, height } = plate;
  const end = nearestOnSegment(middle, a, b);
  const start = edgeToward({ x: middle[0], y: middle[1], width, height, turn: 0 }, end);
  return distance(start, end) >= 10;
}

const leadersOf = ({ shapes }: Drawn) => shapes.filter(({ ink }) => ink.line === 'leader');

/** What a plate hides that it must not, in words. */
function hidden(plate: Plate, [a, b]: Line): readonly string[] {
  return [a, b].filter((end) => covers(plate, end)).map((end) => `an end of its line at ${end.map(Math.round)}`);
}

function troublesAt(scale: number): readonly string[] {
  const pen = penAt({ scale, x: 60, y: 60 }, STAGE);
  store().setStageSize(STAGE);
  store().setViewport(pen.view);
  const level = store().plan.levels.find(({ id }) => id === store().levelId);
  if (!level) throw new Error('no level in view');
  const troubles: string[] = [];
  for (const { id } of ITEM_LISTS.flatMap((list): readonly { readonly id: string }[] => level[list])) {
    store().select([id]);
    const scene = overlayScene({ ...pen });
    let farOff = 0;
    for (const { line, text, middle, width } of figuresOn(pen, store()).own) {
      const plate = { at: [middle[0] + pen.view.x, middle[1] + pen.view.y] as XY, width: width + 10, height: 20 };
      const ends: Line = [px(pen, line[0]), px(pen, line[1])];
      troubles.push(...hidden(plate, ends).map((what) => `${id}: ${text} hides ${what}`));
      if (isFarOff(plate, ends)) farOff += 1;
    }
    const leaders = drawnFigures(pen, store()).flatMap(leadersOf);
    if (leaders.length !== farOff) troubles.push(`${id}: ${farOff} figures off their lines, ${leaders.length} leaders`);
    const index = scene.detectors.findIndex(({ detector }) => detector.id === id);
    const [own, disc] = [scene.detectors[index], scene.discs[index]];
    if (!own?.report || !disc) continue;
    for (const other of scene.discs)
      if (other !== disc && distance(other.at, disc.at) < other.radius + disc.radius + 2)
        troubles.push(`${id} lies on another`);
    for (const check of nearLimit(own.report)) {
      const drawn = drawnMeasures(pen, [check], (each) => measureWords(each, store().plan), scene.placer);
      const [text] = drawn.flatMap(({ texts }) => texts);
      if (!text || !check.witness) continue;
      const plate: Plate = {
        at: text.at,
        width: pen.measure(text.text, text.style) + 10,
        height: text.style.size + 7,
      };
      const ends: Line = [px(pen, check.witness.rim), px(pen, check.witness.subject)];
      troubles.push(...hidden(plate, ends).map((what) => `${id}: ${text.text} hides ${what}`));
      if (isFarOff(plate, ends) !== (drawn.flatMap(leadersOf).length === 1))
        troubles.push(`${id}: ${text.text} is off its line and has no leader, or the other way round`);
      if (gap(plate, disc.at) < disc.radius + 1.3) troubles.push(`${id}: ${text.text} hides its symbol`);
    }
  }
  return troubles;
}

describe.each(someOf(samples, 3))('on the sheet of %s', (name) => {
  const plan = JSON.parse(readFileSync(`samples/${name}`, 'utf8')) as Plan;

  it('no plate of a length hides an end of its line or its detector, and no two detectors lie on one another', () => {
    store().openPlan(plan);
    const troubles = plan.levels.flatMap(({ id }) => {
      store().setLevel(id);
      return SCALES.flatMap((scale) => troublesAt(scale).map((trouble) => `${id} at ${scale}: ${trouble}`));
    });
    expect(troubles).toEqual([]);
  });
});
