import { describe, expect, it } from 'vitest';
import { checkPlan } from '../geometry/check/check-detector.ts';
import type { Check } from '../geometry/check/types.ts';
import { buildLevel } from '../geometry/level/build-level.ts';
import { boardingHouse, FEATURES } from './helpers/boarding-house.ts';
import { type ExpectedCheck, SAMPLE_NAMES, sampleExpected, samplePlan, sampleText } from './helpers/sample-files.ts';

/** mm: the figures of the expected files are rounded to 0.0001. */
const CLOSE = 0.001;

describe.each(SAMPLE_NAMES)('sample %s', (name) => {
  const expected = sampleExpected(name);

  it('has the floor areas of the rooms that were worked out by hand', () => {
    for (const level of samplePlan(name).levels) {
      const rooms = buildLevel(level).rooms;
      for (const room of expected.levels.find(({ id }) => id === level.id)?.rooms ?? []) {
        const found = rooms.find(({ label }) => (label?.id ?? null) === room.id);
        expect((found?.floorArea ?? Number.NaN) / 1e6, `${level.id} ${room.id}: ${room.why}`).toBeCloseTo(
          room.floorArea,
          5,
        );
      }
    }
  });

  it('gives every detector the verdict and the room that were worked out by hand', () => {
    const got = reports(name).map(({ id, verdict, room }) => ({ id, verdict, room }));
    const want = expected.levels
      .flatMap(({ detectors }) => detectors)
      .map(({ id, verdict, room }) => ({ id, verdict, room }));
    expect(got).toEqual(want);
  });

  it('measures what a tape measures', () => {
    const byId = new Map(reports(name).map((report) => [report.id, report]));
    for (const detector of expected.levels.flatMap(({ detectors }) => detectors)) {
      for (const check of detector.checks) {
        const got = byId
          .get(detector.id)
          ?.checks.filter(({ rule, subject }) => rule === check.rule && subject === check.subject);
        const fits = got?.some((one) => agrees(one, check));
        expect(fits, `${detector.id} ${check.rule} ${check.subject}: ${check.why}\ngot ${JSON.stringify(got)}`).toBe(
          true,
        );
      }
    }
  });

  it('finds nothing else that is not clear', () => {
    const got = reports(name).flatMap(({ id, checks }) => checks.filter(troubled).map((check) => naming(id, check)));
    const want = expected.levels
      .flatMap(({ detectors }) => detectors)
      .flatMap(({ id, checks }) => checks.filter(troubled).map((check) => naming(id, check)));
    expect(got.sort()).toEqual(want.sort());
  });
});

describe('the boarding house', () => {
  it('is what its generator makes', () => {
    expect(JSON.parse(sampleText('05-boarding-house'))).toEqual(JSON.parse(JSON.stringify(boardingHouse())));
  });

  it('has 30 rooms and 400 features', () => {
    const [level] = boardingHouse().levels;
    if (!level) throw new Error('the boarding house has no level');
    expect(level.openings.length + level.fixtures.length + level.objects.length).toBe(FEATURES);
    expect(FEATURES).toBe(400);
    expect(buildLevel(level).rooms.length).toBe(30);
    expect(buildLevel(level).notices).toEqual([]);
  });
});

function reports(name: string) {
  return checkPlan(samplePlan(name)).levels.flatMap(({ detectors }) => detectors);
}

function agrees(got: Check, want: ExpectedCheck): boolean {
  const near = (key: 'required' | 'measured' | 'margin') =>
    want[key] === undefined || Math.abs((got[key] ?? Number.NaN) - want[key]) <= CLOSE;
  const same = (key: 'verdict' | 'notRun') => want[key] === undefined || got[key] === want[key];
  return near('required') && near('measured') && near('margin') && same('verdict') && same('notRun');
}

/** Sun that could not run stands in every sample; it is named by the expected checks like the rest. */
function troubled({ verdict, rule }: { readonly verdict: string; readonly rule: string }): boolean {
  return verdict !== 'clear' && rule !== 'direct-sun';
}

function naming(
  detector: string,
  { rule, subject, verdict }: { rule: string; subject: string | null; verdict: string },
): string {
  return `${detector} ${verdict} by ${rule} ${subject ?? ''}`.trim();
}
