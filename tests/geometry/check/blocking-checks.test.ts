import { expect, it } from 'vitest';
import { blockingChecks } from '../../../geometry/check/blocking-checks.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { fixtureAt, hall, planUnder } from '../../helpers/hall.ts';

it('what bars a spot is told the worst first: by the verdict, then by what is missing', () => {
  const box = (y: number) => ({ shape: { box: { center: [-100, y], width: 200, depth: 200, turn: 0 } } }) as const;
  const level = hall({
    fixtures: [
      fixtureAt('floor-drain', { id: 'a', ...box(5000) }),
      fixtureAt('furnace', { id: 'b', ...box(5600) }),
      fixtureAt('sump-pit', { id: 'c', ...box(4000) }),
    ],
  });
  const plan = planUnder('home-short-term', [level]);
  const probe = { base: 900, radius: 50, tall: 25 };
  const found = blockingChecks(plan, buildLevel(level), probe, [300, 5000]);
  const margins = found.filter(({ verdict }) => verdict === 'blocked').map(({ margin }) => margin ?? 0);
  expect(margins.length).toBeGreaterThan(2);
  expect(margins).toEqual([...margins].sort((a, b) => a - b));
  expect(new Set(margins).size).toBe(margins.length);
  // The order in the file does not matter.
  const turned = { ...level, fixtures: [...level.fixtures].reverse() };
  const again = blockingChecks(planUnder('home-short-term', [turned]), buildLevel(turned), probe, [300, 5000]);
  expect(again.map(({ subject }) => subject)).toEqual(found.map(({ subject }) => subject));
});
