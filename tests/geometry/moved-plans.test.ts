import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { Check } from '../../geometry/check/types.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Fixture, Level, Plan, Shape, XY } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { howMany } from '../helpers/how-many.ts';
import { randomPlan } from '../helpers/random-level.ts';

/** A way to draw the same house differently on the page. */
interface Move {
  readonly point: (p: XY) => XY;
  /** A direction or turn in degrees. */
  readonly angle: (degrees: number) => number;
}

const MOVES: Readonly<Record<string, Move>> = {
  moved: { point: ([x, y]) => [x + 12_345.678, y - 9876.54], angle: (a) => a },
  'mirrored left to right': { point: ([x, y]) => [-x, y], angle: (a) => 180 - a },
  'mirrored upside down': { point: ([x, y]) => [x, -y], angle: (a) => -a },
  'turned by 90°': { point: ([x, y]) => [-y, x], angle: (a) => a + 90 },
  'turned by 180°': { point: ([x, y]) => [-x, -y], angle: (a) => a + 180 },
};
const SEEDS = Array.from({ length: howMany(12, 60) }, (_, i) => i + 1);
/** Tolerance, mm: both values are computed in doubles of house size. */
const CLOSE = 1e-6;

function movedPlan(plan: Plan, { point, angle }: Move): Plan {
  const shape = (one: Shape): Shape => {
    if ('circle' in one) return { circle: { ...one.circle, center: point(one.circle.center) } };
    if ('polygon' in one) return { polygon: { points: one.polygon.points.map(point) } };
    return { box: { ...one.box, center: point(one.box.center), turn: angle(one.box.turn) } };
  };
  const stream = ({ stream: own }: Fixture) => own && { ...own, direction: angle(own.direction) };
  const level = (one: Level): Level => ({
    ...one,
    walls: one.walls.map((wall) => ({ ...wall, from: point(wall.from), to: point(wall.to) })),
    rooms: one.rooms.map((room) => ({ ...room, at: point(room.at) })),
    fixtures: one.fixtures.map((fixture) => ({ ...fixture, shape: shape(fixture.shape), stream: stream(fixture) })),
    objects: one.objects.map((object) => ({ ...object, shape: shape(object.shape) })),
    detectors: one.detectors.map((detector) => ({ ...detector, at: point(detector.at) })),
  });
  return { ...plan, levels: plan.levels.map(level) };
}

interface Findings {
  readonly checks: readonly (readonly [name: string, check: Check])[];
  readonly rooms: readonly string[];
  readonly areas: readonly number[];
}

function findings(plan: Plan): Findings {
  const [level] = plan.levels;
  const [probe] = level?.detectors ?? [];
  if (!level || !probe) throw new Error('a plan without a level or a detector');
  const model = buildLevel(level);
  const reports = level.detectors.map((detector) => checkDetector(plan, model, detector));
  const region = levelRegion(plan, model, probe);
  return {
    checks: reports.flatMap(({ id, checks }) => checks.map((check) => [`${id} ${naming(check)}`, check] as const)),
    rooms: reports.map(({ room }) => room ?? '-'),
    areas: [...region.rooms.map(({ area }) => area), ...model.rooms.map(({ floorArea }) => floorArea)].sort(
      (a, b) => a - b,
    ),
  };
}

/** Returns the subject of a row. Of clear subjects only the nearest is reported, and of two at the same distance it may be either. */
function naming({ rule, subject, bound, reason, verdict }: Check): string {
  return `${rule} ${verdict === 'clear' ? 'nearest' : subject} ${bound} ${reason}`;
}

/** Returns whether the margin is where a verdict changes. */
function onTheEdge({ margin }: Check, { tapeTolerance }: Plan): boolean {
  return margin !== null && [-0.1, tapeTolerance].some((limit) => Math.abs(margin - limit) < CLOSE);
}

describe.each(Object.entries(MOVES))('a plan that is %s', (_, move) => {
  it('keeps its findings, distances and areas', () => {
    let compared = 0;
    for (const seed of SEEDS) {
      const plan = randomPlan(seed);
      const before = findings(plan);
      const after = findings(movedPlan(plan, move));
      expect(after.areas.length, `seed ${seed}`).toBe(before.areas.length);
      before.areas.forEach((area, i) => {
        expect(Math.abs((after.areas[i] as number) - area), `seed ${seed}, area ${i}`).toBeLessThan(0.1);
      });
      const edge = before.checks.some(([, check]) => onTheEdge(check, plan));
      if (edge || before.checks.some(([, { rule, measured }]) => rule === 'room-use' && measured !== null)) continue;
      expect(after.rooms, `seed ${seed}`).toEqual(before.rooms);
      for (const [name, check] of before.checks) {
        const same = after.checks.find(([other]) => other === name)?.[1];
        expect(same?.verdict, `seed ${seed}, ${name}`).toBe(check.verdict);
        if (check.measured === null) continue;
        expect(Math.abs((same?.measured ?? Number.NaN) - check.measured), `seed ${seed}, ${name}`).toBeLessThan(CLOSE);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(8 * SEEDS.length);
  });
});

it('a plan whose walls, fixtures and objects stand in another order in the file keeps its findings', () => {
  for (const seed of SEEDS) {
    const plan = randomPlan(seed);
    const reversed = (level: Level): Level => ({
      ...level,
      walls: [...level.walls].reverse(),
      openings: [...level.openings].reverse(),
      fixtures: [...level.fixtures].reverse(),
      objects: [...level.objects].reverse(),
    });
    const before = findings(plan);
    const after = findings({ ...plan, levels: plan.levels.map(reversed) });
    expect(after.rooms).toEqual(before.rooms);
    before.areas.forEach((area, i) => {
      expect(after.areas[i], `seed ${seed}`).toBeCloseTo(area, 2);
    });
    const measures = ({ checks }: Findings) =>
      checks.map(([name, { measured, verdict }]) => `${name} ${measured?.toFixed(6)} ${verdict}`).sort();
    expect(measures(after), `seed ${seed}`).toEqual(measures(before));
  }
});
