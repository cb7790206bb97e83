import type { Level, Override, Plan } from '../../geometry/plan/model.ts';
import { DEGENERATE_CASES } from './random-level/degenerate.ts';
import { Dice } from './random-level/dice.ts';
import { type Draft, emptyDraft, type Pose, posed } from './random-level/draft.ts';
import { addDetectors, addFixtures, addLabels, addObjects, addOpenings } from './random-level/furnish.ts';
import { addHouse } from './random-level/houses.ts';
import { WALL_EXTRAS, withoutDoubt } from './random-level/wall-extras.ts';

/** One seed in this many has degenerate cases, as do some of the others at random. */
const DEGENERATE_EVERY = 5;

/**
 * Returns a plan with one furnished level (sometimes with an empty second one), invented from a seed: 1 to 12 rooms or two
 * houses, rotated by any angle, with everything that a drawing may have. Valid for the reader.
 */
export function randomPlan(seed: number): Plan {
  const dice = new Dice(seed);
  const draft = emptyDraft();
  const width = addHouse(dice, draft, [0, 0]);
  if (dice.chance(0.1)) addHouse(dice, draft, [width + dice.between(700, 5000), dice.between(-2000, 2000)]);
  for (let i = dice.pick([0, 0, 1, 2, 3, 5]); i > 0; i--) dice.pick(WALL_EXTRAS)(dice, draft);
  draft.walls = withoutDoubt(draft.walls);
  addOpenings(dice, draft);
  addLabels(dice, draft);
  addDetectors(dice, draft);
  addFixtures(dice, draft);
  addObjects(dice, draft);
  if (seed % DEGENERATE_EVERY === 0 || dice.chance(0.1)) {
    for (let i = dice.int(2, 5); i > 0; i--) dice.pick(DEGENERATE_CASES)(dice, draft);
  }
  return planOf(dice, draft, seed);
}

function planOf(dice: Dice, draft: Draft, seed: number): Plan {
  const level: Level = {
    id: 'L1',
    name: 'One',
    order: 1,
    ceiling: dice.pick([2286, 2286, 2438.4, dice.between(1200, 2400)]),
    living: dice.pick(['lived-in', 'lived-in', 'could-be', 'no'] as const),
    ground: 'slab',
    ...posed(draft, randomPose(dice)),
  };
  return {
    format: 'stillspot-plan',
    version: 1,
    title: `Seed ${seed}`,
    display: { length: 'metric', radon: 'Bq/m3' },
    site: {
      label: '',
      timeZone: 'UTC',
      latitude: null,
      longitude: null,
      north: 0,
      purpose: dice.pick(['own-household', 'property-transfer', 'after-mitigation'] as const),
    },
    protocol: { profile: 'home-short-term', overrides: randomOverrides(dice) },
    tapeTolerance: dice.pick([25.4, 25.4, 0, 12.7, 60]),
    levels: dice.chance(0.2) ? [level, emptyLevelBeside(dice, level)] : [level],
    kit: { kind: 'charcoal-barrier', minimumHours: 48, maximumHours: 96, labDays: 5 },
    visit: { closedSince: null, mitigationOnSince: null, start: null, end: null },
    conditions: [],
    readings: [],
  };
}

/** Rotated by quarter turns, 45 degrees or any angle; at the origin or far from it. */
function randomPose(dice: Dice): Pose {
  return {
    turn: dice.pick([0, 0, 90, 45, dice.between(0, 360), dice.between(0, 360), dice.between(0, 360)]),
    move: dice.pick([
      [0, 0],
      [dice.between(-3000, 3000), dice.between(-3000, 3000)],
      [dice.between(-90000, 90000), dice.between(-90000, 90000)],
    ] as const),
  };
}

function emptyLevelBeside(dice: Dice, level: Level): Level {
  return {
    ...level,
    id: 'L0',
    name: 'Other',
    order: dice.pick([0, 2]),
    living: dice.pick(['lived-in', 'could-be', 'no'] as const),
    walls: [],
    openings: [],
    rooms: [],
    fixtures: [],
    objects: [],
    detectors: [],
  };
}

/** Rules with one least distance, and the distance of the profile, mm (inches × 25.4). */
const OVERRIDABLE: Readonly<Record<string, number>> = {
  ceiling: 304.8,
  'outside-opening': 914.4,
  'outside-wall': 304.8,
  'moving-air': 914.4,
  heat: 1219.2,
  sump: 2133.6,
  'floor-drain': 914.4,
  object: 101.6,
};

function randomOverrides(dice: Dice): Override[] {
  if (!dice.chance(0.3)) return [];
  return dice
    .shuffled(Object.entries(OVERRIDABLE))
    .slice(0, dice.int(1, 3))
    .map(([rule, published]) => {
      const distance = published * dice.pick([0, 0.5, 1, 1.4, dice.between(0.1, 1.6)]);
      return { rule, distance, note: distance < published ? 'as agreed' : '' };
    });
}
