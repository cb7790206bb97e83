import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { itemsInWalls } from '../../../geometry/snap/in-wall.ts';
import { type CardAnswers, FAR, NO_ANSWERS, type ThingKind } from '../../../src/quick-card/answers.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { modelOf } from '../../../src/quick-card/spot.ts';
import { ANSWERED, FOOT, NOW } from './answered.ts';
import { anyAnswers } from './any-answers.ts';

/**
 * The spot of a card, measured in the room with the answers alone: no wall thickness, no drawing. Distances in mm.
 * 32 Ill. Adm. Code 422.130(a)(1)(D) and 25 Pa. Code 240.310(a)(1)-(2): 36 in, 12 in, 36 in, 48 in, 84 in, 120 in, 4 in;
 * floor drain 36 in: common practice, no published source.
 */
const INCH = 25.4;
const LEAST: Readonly<Record<ThingKind, number>> = {
  window: 36 * INCH,
  'outside-door': 36 * INCH,
  vent: 36 * INCH,
  fan: 36 * INCH,
  heater: 48 * INCH,
  sump: 84 * INCH,
  drain: 36 * INCH,
  washer: 120 * INCH,
};
const RULE = {
  window: 'outside-opening',
  'outside-door': 'outside-opening',
  vent: 'moving-air',
  fan: 'moving-air',
  heater: 'heat',
  sump: 'sump',
} as const;
/** A thing "10 ft or more from this room". */
const TEN_FEET = 10 * FOOT;
/** A distance meets its limit within 0.1 mm; a card prints a tape distance to 1/16 in or 5 mm at worst. */
const ROUNDING = 3;

const cardOf = (answers: CardAnswers) => describeCard(quickPlan(emptyPlan(), answers, NOW));

const leastFor = ({ leaflet }: CardAnswers, kind: ThingKind): number =>
  Math.max(LEAST[kind], kind in RULE ? (leaflet.distances[RULE[kind as keyof typeof RULE]] ?? 0) : 0);

/** The rims of the kits from the upper left corner of the floor, which is the origin of a card's plan. */
function kitsIn(answers: CardAnswers) {
  return (cardOf(answers).spot?.detectors ?? []).map(({ at: [x, y], radius }) => ({ x, y, radius }));
}

/** Distance from a number to a span; zero inside. */
const beyond = (at: number, [from, to]: readonly [number, number]) => Math.max(from - at, 0, at - to);

/** The span of a fifth of a length; a square beyond the floor begins at the face of the wall. */
function spanOf(k: number, length: number): readonly [number, number] {
  if (k < 0) return [Number.NEGATIVE_INFINITY, 0];
  if (k > 4) return [length, Number.POSITIVE_INFINITY];
  return [(k * length) / 5, ((k + 1) * length) / 5];
}

/** Returns by how much each kit is too near to a thing; empty for none. */
function tooNear(answers: CardAnswers): readonly string[] {
  const [across, along] = [answers.across ?? 0, answers.along ?? 0];
  return kitsIn(answers).flatMap(({ x, y, radius }) =>
    answers.things.flatMap(({ kind, square }) => {
      const least = leastFor(answers, kind);
      const [i = 0, j = 0] = square.split(',').map(Number);
      const isCorner = square !== FAR && (i < 0 || i > 4) && (j < 0 || j > 4);
      const isOnFloor = square !== FAR && i >= 0 && i <= 4 && j >= 0 && j <= 4;
      // Neither can be pressed.
      if (isCorner || (isOnFloor && (kind === 'window' || kind === 'outside-door'))) return [];
      const gap =
        square === FAR
          ? TEN_FEET + Math.min(x, across - x, y, along - y)
          : Math.hypot(beyond(x, spanOf(i, across)), beyond(y, spanOf(j, along)));
      return gap - radius < least - ROUNDING ? [`${kind} at ${square}: ${Math.round(gap - radius)} of ${least}`] : [];
    }),
  );
}

describe('the spot of a card, measured in the room', () => {
  it.each<readonly [string, Partial<CardAnswers>]>([
    [
      'a vent that is in an exterior wall, not behind it',
      {
        across: 157.5 * INCH,
        along: 142.5 * INCH,
        inside: ['right', 'up', 'down'],
        things: [
          { kind: 'drain', square: '1,5' },
          { kind: 'vent', square: '-1,1' },
          { kind: 'washer', square: '5,2' },
        ],
        leaflet: { ...ANSWERED.leaflet, distances: { 'moving-air': 59 * INCH, object: 46 * INCH } },
        support: null,
      },
    ],
    [
      'a radiator on a partition',
      {
        unit: 'metric',
        across: 3444,
        along: 2870,
        inside: ['left', 'right'],
        things: [
          { kind: 'heater', square: '5,0' },
          { kind: 'fan', square: '4,4' },
          { kind: 'fan', square: '3,4' },
          { kind: 'heater', square: '1,3' },
        ],
        leaflet: { ...ANSWERED.leaflet, distances: { 'outside-wall': 800 } },
        support: { kind: 'table', top: null },
      },
    ],
    [
      'a sump pit at a wall',
      {
        across: 6 * FOOT,
        along: 29.5 * FOOT,
        inside: ['left', 'right', 'up'],
        things: [
          { kind: 'sump', square: '2,2' },
          { kind: 'drain', square: '3,0' },
          { kind: 'sump', square: '-1,3' },
        ],
        support: { kind: 'table', top: 800 },
      },
    ],
    [
      'a washer behind the wall of the entrance',
      {
        across: 148.5 * INCH,
        along: 145.5 * INCH,
        inside: ['right'],
        things: [{ kind: 'washer', square: '4,5' }],
        support: { kind: 'shelf', top: 1350, square: '5,1' },
      },
    ],
    [
      'a fan 10 ft or more away, where the leaflet asks for more',
      {
        unit: 'metric',
        kits: 2,
        across: 1840,
        along: 7720,
        inside: ['right', 'down'],
        things: [
          { kind: 'window', square: '5,2' },
          { kind: 'fan', square: FAR },
        ],
        leaflet: { ...ANSWERED.leaflet, distances: { 'moving-air': 4394 } },
        support: { kind: 'table', top: 1090 },
      },
    ],
    [
      'a window 10 ft or more away, where the leaflet asks for more',
      {
        across: 5127.625,
        along: 4137.025,
        inside: ['left', 'up', 'down'],
        things: [{ kind: 'window', square: FAR }],
        leaflet: { ...ANSWERED.leaflet, distances: { 'outside-opening': 3916 } },
        support: { kind: 'shelf', top: 1060, square: '-1,4' },
      },
    ],
  ])('keeps its distance from %s', (_, answers) => {
    expect(tooNear({ ...ANSWERED, ...answers })).toEqual([]);
  });

  it('keeps its distance from every thing of any answers', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        expect(tooNear(answers)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a thing in a wall', () => {
  it.each(['5,0', '0,-1', '-1,4', '2,5'])('asks for no correction: %s', (square) => {
    const plan = quickPlan(emptyPlan(), { ...ANSWERED, things: [{ kind: 'vent', square }] }, NOW);
    expect(itemsInWalls(modelOf(plan, 'L1'))).toEqual([]);
  });
});

describe('a window or door far from the room', () => {
  it.each(['window', 'outside-door'] as const)('opens no wall of the room: %s', (kind) => {
    const [level] = quickPlan(
      emptyPlan(),
      { ...NO_ANSWERS, across: 4000, along: 5000, inside: ['right'], things: [{ kind, square: FAR }] },
      NOW,
    ).levels;
    expect(level?.walls.find(({ id }) => id === 'w2')?.side).toBe('inside');
    expect(level?.openings.filter(({ wall }) => /^w[1-4]$/.test(wall))).toEqual([]);
  });
});
