import type { Level, Plan, Shape, XY } from '../../geometry/index.ts';
import { seededRandom } from '../helpers/seeded-level.ts';
import { onlyLevel, withLevel } from './plans.ts';

/** How far a thing is dragged in one step, mm at most along x and y. */
const STEP = 600;

type Edit = (level: Level, random: () => number) => Level;

/** In turn, so that wide zones (sump pits) and those across a wall (doors) come as often as furniture. */
const EDITS: readonly Edit[] = [moveObject, moveFixture, moveOpening, movePit];

/** Plans that follow each other, each with one thing moved: object, fixture, door or window, sump pit, and again. */
export function movedThings(start: Plan, seed = 7): () => Plan {
  const random = seededRandom(seed);
  let plan = start;
  let count = 0;
  return () => {
    const edit = EDITS[count++ % EDITS.length] as Edit;
    plan = withLevel(plan, edit(onlyLevel(plan), random));
    return plan;
  };
}

/** Plans that follow each other, each with the thickness of one wall changed: its rooms change, their number stays. */
export function changedWalls(start: Plan, seed = 7): () => Plan {
  const random = seededRandom(seed);
  let plan = start;
  return () => {
    const level = onlyLevel(plan);
    const k = pick(level.walls.length, random);
    const walls = level.walls.map((wall, i) =>
      i === k ? { ...wall, thickness: wall.thickness % 20 === 0 ? wall.thickness - 10 : wall.thickness + 10 } : wall,
    );
    plan = withLevel(plan, { ...level, walls });
    return plan;
  };
}

function moveObject(level: Level, random: () => number): Level {
  const objects = replaced(level.objects, pick(level.objects.length, random), (one) => ({
    ...one,
    shape: movedShape(one.shape, random),
  }));
  return { ...level, objects };
}

function moveFixture(level: Level, random: () => number): Level {
  return withFixtureMoved(level, pick(level.fixtures.length, random), random);
}

function movePit(level: Level, random: () => number): Level {
  const pits = level.fixtures.flatMap(({ kind }, i) => (kind === 'sump-pit' ? [i] : []));
  return withFixtureMoved(level, pits[pick(pits.length, random)] ?? 0, random);
}

function withFixtureMoved(level: Level, k: number, random: () => number): Level {
  const fixtures = replaced(level.fixtures, k, (one) => ({ ...one, shape: movedShape(one.shape, random) }));
  return { ...level, fixtures };
}

function moveOpening(level: Level, random: () => number): Level {
  const openings = replaced(level.openings, pick(level.openings.length, random), (one) => {
    // To and fro between two places that are both in the wall.
    const offset = one.offset > 200 ? one.offset - 150 : one.offset + 150;
    return { ...one, offset };
  });
  return { ...level, openings };
}

function replaced<T>(list: readonly T[], k: number, change: (one: T) => T): readonly T[] {
  return list.map((one, i) => (i === k ? change(one) : one));
}

function pick(count: number, random: () => number): number {
  return Math.min(count - 1, Math.floor(random() * count));
}

function movedShape(shape: Shape, random: () => number): Shape {
  const dx = STEP * (2 * random() - 1);
  const dy = STEP * (2 * random() - 1);
  const moved = ([x, y]: XY): XY => [x + dx, y + dy];
  if ('circle' in shape) return { circle: { ...shape.circle, center: moved(shape.circle.center) } };
  if ('box' in shape) return { box: { ...shape.box, center: moved(shape.box.center) } };
  return { polygon: { points: shape.polygon.points.map(moved) } };
}
