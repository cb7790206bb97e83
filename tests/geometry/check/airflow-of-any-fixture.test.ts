import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { FixtureKind, Level } from '../../../geometry/plan/model.ts';
import { FIXTURE_KINDS } from '../../../geometry/plan/model.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { fixtureAt, hall, hallDetector, planUnder } from '../../helpers/hall.ts';

const PROFILE_IDS = PROFILES.map(({ id }) => id);

/** Far from the fixture, in the middle of its airflow. */
const AT: [number, number] = [0, 5000];

function blowing(kind: FixtureKind): Partial<Level> {
  const shape = { circle: { center: [-3400, 5000], radius: 100 } } as const;
  return { fixtures: [fixtureAt(kind, { shape, stream: { direction: 0, spread: 40, reach: 4000 } })] };
}

function movingAir(profile: string, change: Partial<Level>) {
  const detector = hallDetector({ at: AT });
  const level = hall({ ...change, detectors: [detector] });
  const plan = planUnder(profile, [level]);
  const opinion = recheck(plan);
  if (!opinion.ok) throw new Error(opinion.cause);
  const ofRule = ({ rule }: { readonly rule: string }) => rule === 'moving-air';
  return {
    first: checkDetector(plan, buildLevel(level), detector).checks.filter(ofRule),
    second: opinion.levels.flatMap(({ detectors }) => detectors.flatMap(({ checks }) => checks)).filter(ofRule),
  };
}

// 25 Pa. Code 240.310(a)(1), 32 Ill. Adm. Code 422.130(a)(1)(D)-(F), Ohio Adm. Code 3701-69-07 App. A, A.1: out of the direct flow of air,
// from any source. The airflow of a heater with a fan or of a dryer is drawn in the same way as that of a register.
describe.each(PROFILE_IDS)('a drawn airflow under %s', (profile) => {
  it.each(FIXTURE_KINDS)('of a %s blocks the detector in it', (kind) => {
    const { first, second } = movingAir(profile, { ...blowing(kind), lookedFor: ['moving-air'] });
    const inIt = { subject: 'f', required: 0, verdict: 'blocked' };
    expect(first).toContainEqual(expect.objectContaining(inIt));
    expect(second).toContainEqual(expect.objectContaining(inIt));
  });

  it('of a heater does not say that somebody looked for registers', () => {
    const { first, second } = movingAir(profile, blowing('space-heater'));
    for (const rows of [first, second])
      expect(rows).toContainEqual(expect.objectContaining({ subject: null, verdict: 'unknown', notRun: true }));
  });
});
