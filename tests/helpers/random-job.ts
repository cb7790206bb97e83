import type { Plan } from '../../geometry/plan/model.ts';
import { Dice } from './random-level/dice.ts';
import { randomPlan } from './random-level.ts';

/** Names that a page must show unchanged. */
const NAMES = [
  `<script>alert("1")</script>`,
  `"Tom & Ann's" <b>den</b>`,
  'Łódź, Ångström ½',
  ']]> --> &amp; &#60;',
  '=1+1',
  ' Two  spaces',
  'Rumpus room under the stairs, as far as the old coal cellar',
  'Bad',
  '',
] as const;
const START = '2026-03-07T18:00:00-05:00';
const END = '2026-03-10T18:30:00-04:00';

/** Returns a job invented from a seed: a random house, names with special characters, and a test with more or fewer records. */
export function randomJob(seed: number): Plan {
  const dice = new Dice(seed * 7 + 3);
  const plan = randomPlan(seed);
  const name = () => dice.pick(NAMES);
  const levels = plan.levels.map((level) => ({
    ...level,
    rooms: level.rooms.map((room) => ({ ...room, name: name() })),
    objects: level.objects.map((object) => ({ ...object, name: name() })),
    detectors: level.detectors.map((detector) => ({ ...detector, label: dice.chance(0.3) ? name() : detector.label })),
  }));
  const detectors = levels.flatMap((level) => level.detectors);
  return {
    ...plan,
    title: `${name()} ${seed}`,
    display: dice.chance(0.5) ? { length: 'feet-inches', radon: 'pCi/L' } : plan.display,
    site: { ...plan.site, label: name(), timeZone: 'America/New_York', north: dice.pick([0, 33, 271]) },
    levels,
    visit: { ...plan.visit, start: dice.chance(0.7) ? START : null, end: dice.chance(0.5) ? END : null },
    conditions: (['windows-closed', 'doors-closed', 'not-disturbed'] as const).map((item) => ({
      item,
      state: dice.pick(['kept', 'broken', 'unknown'] as const),
      at: null,
      note: name(),
    })),
    readings: dice.chance(0.6)
      ? detectors.map(({ id }) => ({ detector: id, value: dice.int(1, 90) / 10, unit: 'pCi/L' as const }))
      : [],
    log: detectors.map(({ id }) => ({
      detector: id,
      serial: name(),
      placedBy: name(),
      fetchedBy: name(),
      sealed: null,
      tampering: dice.pick(['none', 'seen', 'unknown'] as const),
      note: name(),
      photos: [],
      custody: [],
    })),
    report: { drawing: { by: name(), at: dice.chance(0.5) ? START : null }, houseType: name() },
  };
}
