import type { Level, Plan, Shape, XY } from '../../geometry/plan/model.ts';
import { seededRandom } from '../helpers/seeded-level.ts';
import { onlyLevel, withLevel } from './plans.ts';

/** Largest distance of a thing from its first place, mm along x and y. */
const REACH = 600;

/** `start` is the level before all edits: things are moved around their first places, so that they do not drift off the sheet. */
type Edit = (level: Level, start: Level, random: () => number) => Level;

/** In turn, so that wide zones (sump pits) and zones across a wall (doors) are as frequent as furniture. */
const EDITS: readonly Edit[] = [moveObject, moveFixture, moveOpening, movePit];

/** Returns a generator of successive plans, each with one thing moved: object, fixture, door or window, sump pit, in turn. */
export function movedThings(first: Plan, seed = 7): () => Plan {
  const random = seededRandom(seed);
  const start = onlyLevel(first);
  let plan = first;
  let count = 0;
  return () => {
    const edit = EDITS[count++ % EDITS.length] as Edit;
    plan = withLevel(plan, edit(onlyLevel(plan), start, random));
    return plan;
  };
}

/** Returns a generator of successive plans, each with the thickness of one wall changed: its rooms change, their number does not. */
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

function moveObject(level: Level, start: Level, random: () => number): Level {
  const k = pick(level.objects.length, random);
  const objects = replaced(level.objects, k, (one) => ({ ...one, shape: movedShape(start.objects[k], random) }));
  return { ...level, objects };
}

function moveFixture(level: Level, start: Level, random: () => number): Level {
  return withFixtureMoved(level, start, pick(level.fixtures.length, random), random);
}

function movePit(level: Level, start: Level, random: () => number): Level {
  const pits = level.fixtures.flatMap(({ kind }, i) => (kind === 'sump-pit' ? [i] : []));
  return withFixtureMoved(level, start, pits[pick(pits.length, random)] ?? 0, random);
}

function withFixtureMoved(level: Level, start: Level, k: number, random: () => number): Level {
  const fixtures = replaced(level.fixtures, k, (one) => ({ ...one, shape: movedShape(start.fixtures[k], random) }));
  return { ...level, fixtures };
}

function moveOpening(level: Level, start: Level, random: () => number): Level {
  const k = pick(level.openings.length, random);
  const first = start.openings[k]?.offset ?? 0;
  const openings = replaced(level.openings, k, (one) => ({ ...one, offset: Math.max(0, first - random() * REACH) }));
  return { ...level, openings };
}

function replaced<T>(list: readonly T[], k: number, change: (one: T) => T): readonly T[] {
  return list.map((one, i) => (i === k ? change(one) : one));
}

function pick(count: number, random: () => number): number {
  return Math.min(count - 1, Math.floor(random() * count));
}

function movedShape(first: { readonly shape: Shape } | undefined, random: () => number): Shape {
  if (!first) throw new Error('edits neither add nor take away');
  const { shape } = first;
  const dx = REACH * (2 * random() - 1);
  const dy = REACH * (2 * random() - 1);
  const moved = ([x, y]: XY): XY => [x + dx, y + dy];
  if ('circle' in shape) return { circle: { ...shape.circle, center: moved(shape.circle.center) } };
  if ('box' in shape) return { box: { ...shape.box, center: moved(shape.box.center) } };
  return { polygon: { points: shape.polygon.points.map(moved) } };
}
