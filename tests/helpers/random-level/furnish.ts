import {
  type Detector,
  FIXTURE_KINDS,
  type Mm,
  type PlanObject,
  ROOM_USES_ALLOWED,
  ROOM_USES_BARRED,
  type Shape,
  type Stream,
  type XY,
} from '../../../geometry/plan/model.ts';
import type { Dice } from './dice.ts';
import { alongWall, type Draft, wallLength } from './draft.ts';

export function addOpenings(dice: Dice, draft: Draft): void {
  const count = Math.min(draft.walls.length, dice.int(0, 7));
  for (let i = 0; i < count; i++) {
    const wall = dice.pick(draft.walls);
    const length = wallLength(wall);
    if (length < 60) continue;
    const width = dice.chance(0.1) ? length : Math.min(length, dice.between(50, 1800));
    const offset = dice.pick([0, length - width, dice.between(0, length - width), dice.between(0, length - width)]);
    draft.openings.push({
      id: `o${i}`,
      wall: wall.id,
      kind: dice.pick(['door', 'window', 'window', 'passage'] as const),
      offset: Math.max(0, offset),
      width: Math.min(width, length - Math.max(0, offset)),
      bottom: 0,
      top: 2000,
    });
  }
}

/** Adds a label to most cells; some rooms get none, some two, and some labels are outdoors. */
export function addLabels(dice: Dice, draft: Draft): void {
  draft.cells.forEach(({ middle, reach }, i) => {
    if (dice.chance(0.12)) return;
    const at: XY = [middle[0] + dice.between(-0.3, 0.3) * reach[0], middle[1] + dice.between(-0.3, 0.3) * reach[1]];
    const use = dice.pick(dice.chance(0.8) ? ROOM_USES_ALLOWED : ROOM_USES_BARRED);
    draft.rooms.push({ id: `r${i}`, name: '', use, at });
  });
  if (dice.chance(0.1)) draft.rooms.push({ id: 'r-astray', name: '', use: 'den', at: [-7000, -7000] });
}

/** Returns a random point in a room, sometimes outside it, sometimes on a wall. */
export function somewhere(dice: Dice, draft: Draft): XY {
  if (dice.chance(0.12) && draft.walls.length > 0) {
    return alongWall(dice.pick(draft.walls), dice.next(), dice.between(-60, 60));
  }
  const { middle, reach } = dice.pick(draft.cells);
  const spread = dice.chance(0.15) ? 1.6 : 0.95;
  return [middle[0] + dice.between(-spread, spread) * reach[0], middle[1] + dice.between(-spread, spread) * reach[1]];
}

export function randomShape(dice: Dice, center: XY, largest: Mm): Shape {
  const kind = dice.next();
  if (kind < 0.35) return { circle: { center, radius: dice.between(20, largest / 2) } };
  if (kind < 0.75) {
    const turn = dice.pick([0, 0, 90, 45, dice.between(-180, 180)]);
    return { box: { center, width: dice.between(20, largest), depth: dice.between(20, largest), turn } };
  }
  return { polygon: { points: starRing(dice, center, largest / 2) } };
}

/** A ring without crossings: corners at increasing angles, at varying distances (not convex) or at equal ones (convex). */
function starRing(dice: Dice, [x, y]: XY, radius: Mm): XY[] {
  const count = dice.int(3, 8);
  const even = dice.chance(0.4);
  const start = dice.between(0, 2 * Math.PI);
  const points = Array.from({ length: count }, (_, i): XY => {
    const angle = start + ((i + (even ? 0 : dice.between(-0.3, 0.3))) * 2 * Math.PI) / count;
    const out = even ? radius : radius * dice.between(0.25, 1);
    return [x + out * Math.cos(angle), y + out * Math.sin(angle)];
  });
  return dice.chance(0.5) ? points : points.reverse();
}

export function randomStream(dice: Dice): Stream {
  return {
    direction: dice.between(-180, 360),
    spread: dice.pick([0, 30, 60, 90, 180, 360, dice.between(1, 359), dice.between(1, 359)]),
    reach: dice.pick([0, dice.between(100, 4000), dice.between(300, 2000), dice.between(300, 2000)]),
  };
}

export function addFixtures(dice: Dice, draft: Draft): void {
  const count = dice.pick([0, 1, 2, 3, 4, 6, 10]);
  for (let i = 0; i < count; i++) {
    draft.fixtures.push({
      id: `f${i}`,
      kind: dice.pick(FIXTURE_KINDS),
      name: '',
      shape: randomShape(dice, somewhere(dice, draft), 700),
      bottom: 0,
      top: dice.pick([0, 500, 2000]),
      stream: dice.chance(0.4) ? randomStream(dice) : null,
    });
  }
}

/** Heights below, at and above that of the detectors; some things hang above the floor. */
function randomHeights(dice: Dice, { base, tall }: Detector): Pick<PlanObject, 'bottom' | 'top'> {
  const over = base + tall;
  return dice.pick([
    { bottom: 0, top: dice.between(100, base - 1) },
    { bottom: 0, top: base },
    { bottom: 0, top: base + 0.5 },
    { bottom: 0, top: 2000 },
    { bottom: 0, top: 2000 },
    { bottom: over, top: 2200 },
    { bottom: over + dice.between(1, 101), top: over + 400 },
    { bottom: over + dice.between(1, 101), top: over + 400 },
    { bottom: over + 101.6, top: over + 400 },
    { bottom: over + dice.between(102, 300), top: over + 500 },
  ]);
}

export function addObjects(dice: Dice, draft: Draft): void {
  const count = dice.pick([0, 1, 3, 5, 8]);
  for (let i = 0; i < count; i++) {
    const detector = dice.pick(draft.detectors);
    draft.objects.push({
      id: `t${i}`,
      name: '',
      shape: randomShape(dice, somewhere(dice, draft), 1500),
      ...randomHeights(dice, detector),
    });
  }
}

/** Adds one to three detectors; the first one is the probe of the level. Some are a pair, with a right or wrong spacing. */
export function addDetectors(dice: Dice, draft: Draft): void {
  const size = {
    base: dice.pick([762, 762, 508, dice.between(508, 1700), dice.between(300, 1900)]),
    radius: dice.pick([50.8, 50.8, 38, dice.between(0, 120)]),
    tall: dice.pick([25.4, dice.between(0, 150)]),
  };
  const count = dice.int(1, 3);
  const paired = count > 1 && dice.chance(0.5);
  for (let i = 0; i < count; i++) {
    const first = draft.detectors[0];
    const beside = paired && i === 1 && first;
    const gap = beside ? 2 * size.radius + dice.pick([101.6, 203.2, 150, dice.between(0, 400)]) : 0;
    const angle = dice.between(0, 2 * Math.PI);
    draft.detectors.push({
      id: `d${i}`,
      label: '',
      at: beside ? [first.at[0] + gap * Math.cos(angle), first.at[1] + gap * Math.sin(angle)] : somewhere(dice, draft),
      ...(i === 2 ? { ...size, radius: dice.between(10, 90), base: size.base + dice.between(0, 200) } : size),
      pair: lonelyOrPaired(dice, paired, i),
    });
  }
}

function lonelyOrPaired(dice: Dice, paired: boolean, i: number): string | null {
  if (paired && i < 2) return 'A';
  return dice.chance(0.1) ? dice.pick(['A', 'B']) : null;
}
