import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { shareModelParts, shareZones } from '../../../src/state/structural-sharing.ts';

const PROBE = { base: 762, radius: 50.8, tall: 25.4 };

function boardingHouse(): Plan {
  const read = parsePlan(readFileSync('samples/05-boarding-house.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the boarding house cannot be read');
  return read.plan;
}

/** The house, and what comes of it, before and after a wall between two rooms was moved. */
function moved(by: number) {
  const plan = boardingHouse();
  const [level] = plan.levels;
  if (!level) throw new Error('no level');
  const plain = level.walls.filter(({ id }) => !level.openings.some(({ wall }) => wall === id));
  const wall = plain[Math.floor(plain.length / 2)];
  if (!wall) throw new Error('no wall without openings');
  const next = withItemsMoved(level, new Set([wall.id]), [by, 0]);
  const after = { ...plan, levels: [next] };
  const [before, fresh] = [buildLevel(level), buildLevel(next)];
  return { plan, after, before, fresh, kept: shareModelParts(before, fresh) };
}

it('what an edit gives back is the same in value, part by part and in the same order', () => {
  const { plan, after, before, fresh, kept } = moved(300);
  expect(kept).toEqual(fresh);
  const region = levelRegion(after, kept, PROBE);
  expect(shareZones(levelRegion(plan, before, PROBE), region)).toEqual(region);
});

it('most rooms, pieces and zones of a large house are the objects that they were; what moved is not', () => {
  const { plan, after, before, fresh, kept } = moved(300);
  const same = <T>(old: readonly T[], now: readonly T[]) => now.filter((one) => old.includes(one)).length;
  expect(same(before.rooms, fresh.rooms)).toBe(0);
  expect(same(before.rooms, kept.rooms)).toBeGreaterThan(before.rooms.length * 0.8);
  expect(same(before.rooms, kept.rooms)).toBeLessThan(before.rooms.length);
  expect(same(before.pieces, kept.pieces)).toBeLessThan(before.pieces.length);
  const old = levelRegion(plan, before, PROBE);
  const now = shareZones(old, levelRegion(after, kept, PROBE));
  expect(same(old.zones, now.zones)).toBeGreaterThan(old.zones.length * 0.8);
});

it('another level keeps nothing', () => {
  const { before, fresh } = moved(300);
  const other = { ...fresh, level: { ...fresh.level, id: 'another' } };
  expect(shareModelParts(before, other)).toBe(other);
  expect(shareModelParts(null, fresh)).toBe(fresh);
});
