import type { FixtureKind, Mm, Shape, XY } from '../../../geometry/plan/model.ts';
import type { Dice } from './dice.ts';
import { alongWall, type Draft } from './draft.ts';
import { randomShape, randomStream, somewhere } from './furnish.ts';

/** The limits of the profile that these cases are built around, mm (inches × 25.4), and the shortfall that still passes. */
const AIR: Mm = 914.4;
const HEAT: Mm = 1219.2;
const OBJECT: Mm = 101.6;
const SHORTFALL: Mm = 0.1;

/** Offsets, mm: zero, of rounding, and smaller and larger than the tolerance of touching. */
const HAIRS = [0, 0, 0, 1e-9, -1e-9, 1e-7, -1e-7, 1e-5, -1e-5, 1e-3, -1e-3];

type Case = (dice: Dice, draft: Draft) => void;

/** Each makes things in the draft meet exactly or almost. */
export const DEGENERATE_CASES: readonly Case[] = [
  sameOutline,
  tangentDiscs,
  closingGap,
  closingGap,
  onWall,
  flushWithWall,
  nested,
  withoutSize,
  onCorner,
  twins,
  rowOfBoxes,
  detectorAtLimit,
  detectorOnSomething,
  zoneThroughCorner,
  tangentToWallZone,
  straightCorners,
  sharedApex,
];

function addFixture(draft: Draft, kind: FixtureKind, shape: Shape): void {
  draft.fixtures.push({ id: `f${draft.fixtures.length}`, kind, name: '', shape, bottom: 0, top: 0, stream: null });
}

function addTallObject(draft: Draft, shape: Shape): void {
  draft.objects.push({ id: `t${draft.objects.length}`, name: '', shape, bottom: 0, top: 2200 });
}

/** Distance by which a zone extends beyond its body, mm, for the axis of the first detector. */
function reach({ detectors }: Draft, limit: Mm): Mm {
  return limit - SHORTFALL + (detectors[0]?.radius ?? 0);
}

/** Zones of two rules around two bodies with the same outline. */
function sameOutline(dice: Dice, draft: Draft): void {
  const center = somewhere(dice, draft);
  const radius = dice.between(10, 200);
  const hair = dice.pick(HAIRS);
  addFixture(draft, 'radiator', { circle: { center, radius } });
  addFixture(draft, 'return-grille', { circle: { center, radius: radius + HEAT - AIR + hair } });
}

function tangentDiscs(dice: Dice, draft: Draft): void {
  const [x, y] = somewhere(dice, draft);
  const radius = dice.between(0, 200);
  const apart = 2 * (radius + reach(draft, AIR)) + dice.pick(HAIRS);
  const angle = dice.pick([0, Math.PI / 2, dice.between(0, 2 * Math.PI)]);
  addFixture(draft, 'humidifier', { circle: { center: [x, y], radius } });
  addFixture(draft, 'air-cleaner', {
    circle: { center: [x + apart * Math.cos(angle), y + apart * Math.sin(angle)], radius },
  });
}

/** Two objects at the distance where the gap between their zones just closes. */
function closingGap(dice: Dice, draft: Draft): void {
  const [x, y] = somewhere(dice, draft);
  const [width, depth] = [dice.between(100, 900), dice.between(100, 900)];
  const apart = width + 2 * reach(draft, OBJECT) + dice.pick(HAIRS);
  addTallObject(draft, { box: { center: [x, y], width, depth, turn: 0 } });
  addTallObject(draft, {
    box: { center: [x + apart, y + dice.pick([0, 50])], width, depth: dice.pick([depth, depth / 2]), turn: 0 },
  });
}

function onWall(dice: Dice, draft: Draft): void {
  if (draft.walls.length === 0) return;
  const center = alongWall(dice.pick(draft.walls), dice.pick([0.5, dice.next()]));
  addFixture(draft, dice.pick(['supply-register', 'exhaust-fan', 'radiator']), randomShape(dice, center, 400));
}

/** A box whose back runs along the wall face. */
function flushWithWall(dice: Dice, draft: Draft): void {
  if (draft.walls.length === 0) return;
  const wall = dice.pick(draft.walls);
  const depth = dice.between(100, 600);
  const side = dice.pick([-1, 1]);
  const turn = (Math.atan2(wall.to[1] - wall.from[1], wall.to[0] - wall.from[0]) * 180) / Math.PI;
  const center = alongWall(wall, dice.between(0.2, 0.8), side * (wall.thickness / 2 + depth / 2 + dice.pick(HAIRS)));
  addTallObject(draft, { box: { center, width: dice.between(200, 900), depth, turn } });
}

function nested(dice: Dice, draft: Draft): void {
  const center = somewhere(dice, draft);
  addFixture(draft, 'furnace', { circle: { center, radius: 300 } });
  addFixture(draft, 'portable-fan', { circle: { center: [center[0] + dice.pick([0, 100]), center[1]], radius: 50 } });
  addTallObject(draft, { box: { center, width: 200, depth: 100, turn: dice.between(0, 90) } });
}

/** A circle or box of zero size, or a box of zero width or depth. */
function withoutSize(dice: Dice, draft: Draft): void {
  const center = somewhere(dice, draft);
  const shape = dice.pick<Shape>([
    { circle: { center, radius: 0 } },
    { box: { center, width: 0, depth: 0, turn: 30 } },
    { box: { center, width: dice.between(10, 900), depth: 0, turn: dice.pick([0, 90, 33]) } },
    { box: { center, width: 0, depth: dice.between(10, 900), turn: dice.pick([0, 90, 33]) } },
  ]);
  if (dice.chance(0.5)) addTallObject(draft, shape);
  else addFixture(draft, dice.pick(['floor-drain', 'supply-register', 'sump-pit']), shape);
}

/** A fixture exactly on the end of a wall: at the corner of a room, where three or four walls may meet. */
function onCorner(dice: Dice, draft: Draft): void {
  if (draft.walls.length === 0) return;
  const { from } = dice.pick(draft.walls);
  addFixture(draft, dice.pick(['floor-drain', 'boiler', 'ceiling-fan']), randomShape(dice, from, 300));
}

function twins(dice: Dice, draft: Draft): void {
  const fixture = draft.fixtures.length > 0 ? dice.pick(draft.fixtures) : null;
  if (fixture) draft.fixtures.push({ ...fixture, id: `f${draft.fixtures.length}` });
  const object = draft.objects.length > 0 ? dice.pick(draft.objects) : null;
  if (object) draft.objects.push({ ...object, id: `t${draft.objects.length}` });
}

/** Cupboards side by side: every box shares an edge, or part of one, with the next. */
function rowOfBoxes(dice: Dice, draft: Draft): void {
  const [x, y] = somewhere(dice, draft);
  const depth = dice.between(200, 600);
  const width = dice.between(150, 500);
  for (let i = 0; i < 4; i++) {
    const own = dice.pick([depth, depth / 2]);
    addTallObject(draft, { box: { center: [x + i * width, y + own / 2], width, depth: own, turn: 0 } });
  }
}

/** A fixture exactly at the required distance from the first detector. */
function detectorAtLimit(dice: Dice, draft: Draft): void {
  const [detector, ...others] = draft.detectors;
  if (!detector) return;
  const angle = dice.pick([0, Math.PI / 2, dice.between(0, 2 * Math.PI)]);
  const radius = dice.between(0, 300);
  const out = radius + detector.radius + HEAT + dice.pick([0, ...HAIRS, -SHORTFALL - 0.02, -SHORTFALL + 0.02]);
  const center: XY = [detector.at[0] + out * Math.cos(angle), detector.at[1] + out * Math.sin(angle)];
  addFixture(draft, 'wood-stove', { circle: { center, radius } });
  draft.detectors = [detector, ...others];
}

function detectorOnSomething(dice: Dice, draft: Draft): void {
  const k = dice.int(0, draft.detectors.length - 1);
  const object = draft.objects[0];
  const wall = draft.walls[0];
  const spots: XY[] = [];
  if (object && 'circle' in object.shape) spots.push(object.shape.circle.center);
  if (object && 'polygon' in object.shape) spots.push(object.shape.polygon.points[0] as XY);
  if (wall) spots.push(alongWall(wall, 0.3), wall.from);
  if (spots.length === 0) return;
  const at = dice.pick(spots);
  draft.detectors = draft.detectors.map((detector, i) => (i === k ? { ...detector, at } : detector));
}

/** A disc whose zone passes through the end of a wall's center-line. */
function zoneThroughCorner(dice: Dice, draft: Draft): void {
  if (draft.walls.length === 0) return;
  const { from } = dice.pick(draft.walls);
  const radius = dice.between(0, 150);
  const angle = dice.between(0, 2 * Math.PI);
  const out = radius + reach(draft, HEAT) + dice.pick(HAIRS);
  addFixture(draft, 'space-heater', {
    circle: { center: [from[0] + out * Math.cos(angle), from[1] + out * Math.sin(angle)], radius },
  });
}

/** A disc whose zone just touches the zone along an inside wall. */
function tangentToWallZone(dice: Dice, draft: Draft): void {
  if (draft.walls.length === 0) return;
  const wall = dice.pick(draft.walls);
  const radius = dice.between(0, 150);
  const aside = wall.thickness / 2 + reach(draft, OBJECT) + reach(draft, AIR) + radius + dice.pick(HAIRS);
  const center = alongWall(wall, dice.between(0.3, 0.7), dice.pick([-1, 1]) * aside);
  addFixture(draft, 'dehumidifier', { circle: { center, radius } });
}

/** A polygon with a straight corner, and opposite it another one, or a notch that may almost reach it. */
function straightCorners(dice: Dice, draft: Draft): void {
  const [x, y] = somewhere(dice, draft);
  const [w, d] = [dice.between(200, 800), dice.between(200, 800)];
  addTallObject(draft, {
    polygon: {
      points: [
        [x, y],
        [x + w / 2, y],
        [x + w, y],
        [x + w, y + d],
        [x + w / 2, y + d * dice.pick([1, 0.5, 0.01])],
        [x, y + d],
      ],
    },
  });
}

/** Two streams from one point, the second one rotated, also by the spread so that it begins where the first ends. */
function sharedApex(dice: Dice, draft: Draft): void {
  const center = somewhere(dice, draft);
  const stream = randomStream(dice);
  const shape: Shape = { circle: { center, radius: 40 } };
  for (const turn of [0, dice.pick([0, stream.spread, 180])]) {
    addFixture(draft, 'supply-register', shape);
    const k = draft.fixtures.length - 1;
    draft.fixtures = draft.fixtures.map((fixture, i) =>
      i === k ? { ...fixture, stream: { ...stream, direction: stream.direction + turn } } : fixture,
    );
  }
}
