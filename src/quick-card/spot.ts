import { checkDetector } from '../../geometry/check/check-detector.ts';
import { openChecks } from '../../geometry/check/looked-for.ts';
import { compareVerdicts } from '../../geometry/check/measure.ts';
import type { Verdict } from '../../geometry/check/types.ts';
import { moveToGap, nearGaps, SIDES, type Side } from '../../geometry/dimension/wall-gaps.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Level, Mm, Plan, PlanObject, XY } from '../../geometry/plan/model.ts';
import { shapeMiddle } from '../../geometry/plane/body.ts';
import { distance } from '../../geometry/plane/point.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';
import { bestGroups } from '../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../geometry/search/best-spots.ts';
import { roomFloor } from '../../geometry/search/room-floor.ts';
import { OBJECT_DEFAULTS } from '../state/defaults.ts';
import { withDetectors } from '../state/side-by-side.ts';
import { type CardAnswers, SQUARES } from './answers.ts';
import { neededAnswers } from './needed.ts';
import { areaOf, sideOfSquare, sizeOf } from './room-plan.ts';
import { hoursTrouble } from './schedule.ts';

/** The spot of a card: the carrier of the detector, and the best place for it. */

const { radius, tall } = USUAL_DETECTOR;

/** Usual height of a top that is not measured; side of a small table; thickness of a board, mm. Common practice, no published source. */
const USUAL_TOP = { table: 762, shelf: 1219.2 } as const;
const TABLE_SIDE: Mm = 508;
const BOARD: Mm = 25.4;
/** The id of the object that a card adds to carry its kit. */
export const CARRIER = 't1';
/** Distance of a table from the walls, mm: 1 in. */
const OFF_WALL: Mm = 25.4;

/** Allowed range of the underside of a detector, mm above the floor; empty if `low` is above `high`. */
export interface Band {
  readonly low: Mm;
  readonly high: Mm;
}

/** Returns the range of heights that the rules, the leaflet and a measured ceiling allow. */
export function heightBand({ protocol }: Plan, { leaflet: { lowest, highest }, ceiling }: CardAnswers): Band {
  const rules = effectiveRules(protocol);
  const rule = rules.find(({ subject }) => subject.of === 'height');
  const below = rules.find(({ id }) => id === 'ceiling')?.least ?? 0;
  const low = Math.max(rule?.least ?? 0, lowest ?? 0);
  const limits = [rule?.most, highest, ceiling === null ? null : ceiling - below];
  return { low, high: Math.min(...limits.map((limit) => limit ?? Number.POSITIVE_INFINITY)) - tall };
}

/** Returns the height of the top that carries the detector, mm: as measured, or a usual one within the band. */
export function topOf(plan: Plan, answers: CardAnswers): Mm {
  const { support } = answers;
  if (support?.top != null) return support.top;
  const { low, high } = heightBand(plan, answers);
  return Math.max(low, Math.min(high, USUAL_TOP[support?.kind ?? 'table']));
}

/** Returns whether the height of a top is in the band. */
export function isInBand({ low, high }: Band, top: Mm): boolean {
  return top >= low && top <= high;
}

/**
 * Returns the plan with a detector, or two side by side, at the best spot of its room, and the carrier. Without a detector, only with the
 * shelf, if no spot is valid or no test can meet the hours of the leaflet. Only the check decides whether a spot is valid.
 */
export function withSpot(plan: Plan, levelId: string, answers: CardAnswers): Plan {
  const top = topOf(plan, answers);
  const carried = withShelf(plan, levelId, answers, top);
  if (neededAnswers(answers).length > 0 || hoursTrouble(plan, answers.leaflet)) return carried;
  if (!isInBand(heightBand(plan, answers), top)) return carried;
  const model = modelOf(carried, levelId);
  const probe: Probe = { base: top, radius, tall };
  const found = axesFor(carried, model, probe, answers);
  if (!found) return carried;
  const seat = (axes: readonly XY[]) => seatOf(placed(carried, levelId, answers, probe, axes), levelId);
  const exact = seat(found);
  for (const axes of handyAxes(carried, model, found)) {
    const handy = seat(axes);
    if (isValid(handy) && !isWorse(handy, exact)) return handy.plan;
  }
  return isValid(exact) ? exact.plan : carried;
}

export function modelOf(plan: Plan, levelId: string): LevelModel {
  return buildLevel(plan.levels.find(({ id }) => id === levelId) as Level);
}

/** A plan with its detectors, their worst verdict, and how many of their checks are open. */
interface Seat {
  readonly plan: Plan;
  readonly verdict: Verdict;
  readonly open: number;
}

function seatOf(plan: Plan, levelId: string): Seat {
  const model = modelOf(plan, levelId);
  const reports = model.level.detectors.map((one) => checkDetector(plan, model, one));
  const [worst = 'clear'] = reports.map(({ verdict }) => verdict).sort(compareVerdicts);
  return { plan, verdict: worst, open: reports.flatMap(openChecks).length };
}

const isValid = ({ verdict }: Seat): boolean => compareVerdicts(verdict, 'tight') >= 0;

/** A worse verdict, or more that is open: the foot may be off the edge of the shelf. */
const isWorse = (a: Seat, b: Seat): boolean => compareVerdicts(a.verdict, b.verdict) < 0 || a.open > b.open;

/** Returns the axes of the best place on the shelf, or anywhere in the room; null for none. */
export function axesFor(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  { support, kits }: CardAnswers,
): readonly XY[] | null {
  const options = { onFurniture: support?.kind === 'shelf' };
  if (kits === 2) {
    const [pair] = bestGroups(plan, model, probe, 2, options);
    return pair && (support?.kind !== 'shelf' || pair.on !== null) ? pair.at : null;
  }
  const [spot] = bestSpots(plan, model, probe, options);
  return spot && (support?.kind !== 'shelf' || spot.on !== null) ? [spot.at] : null;
}

/**
 * Axes near the best ones, the handiest first: two in line with the walls, and both tape distances of their middle whole inches or 5 cm, or
 * else as finely as the card prints them.
 */
function handyAxes(plan: Plan, model: LevelModel, best: readonly XY[]): readonly (readonly XY[])[] {
  const steps = plan.display.length === 'metric' ? [50, 5] : [25.4, 25.4 / 8];
  const turned = [...inLine(best), best];
  return steps.flatMap((step) => turned.map((axes) => roundedAxes(model, axes, step)));
}

/** Two axes turned about their middle to be in line with the walls, first along the nearer direction; none for one axis. */
function inLine(axes: readonly XY[]): readonly (readonly XY[])[] {
  const [a, b] = axes;
  if (!a || !b) return [];
  const [x, y] = middleOf(axes);
  const half = distance(a, b) / 2;
  const level: readonly XY[] = [
    [x - half, y],
    [x + half, y],
  ];
  const upright: readonly XY[] = [
    [x, y - half],
    [x, y + half],
  ];
  return Math.abs(b[0] - a[0]) >= Math.abs(b[1] - a[1]) ? [level, upright] : [upright, level];
}

/** The detectors moved together so that the two tape distances of their middle are multiples of a step. */
function roundedAxes(model: LevelModel, axes: readonly XY[], step: Mm): readonly XY[] {
  const moves = nearGaps(model, middleOf(axes), NO_REACH).map(({ side, gap }) =>
    moveToGap(side, gap, Math.round(gap / step) * step),
  );
  return axes.map((at) => moves.reduce(([x, y], [dx, dy]): XY => [x + dx, y + dy], at));
}

/** Reach of zero on each side: tape distances are measured to the middle of the detector. */
export const NO_REACH = Object.fromEntries(SIDES.map((side) => [side, 0])) as Readonly<Record<Side, Mm>>;

/** Returns the plan with detectors at these axes, and a table below them if the answers have one. */
function placed(plan: Plan, levelId: string, answers: CardAnswers, { base }: Probe, axes: readonly XY[]): Plan {
  const tabled = answers.support?.kind === 'table' ? withTable(plan, levelId, answers, base, axes) : plan;
  return withDetectors(tabled, levelId, { axes, base, radius, tall, mutual: true }, null).plan;
}

/** Returns the plan with the small table of these answers below detectors at these axes. */
export function withTable(plan: Plan, levelId: string, answers: CardAnswers, top: Mm, axes: readonly XY[]): Plan {
  const [x, y] = middleOf(axes);
  const model = modelOf(plan, levelId);
  const free = Math.min(...model.rooms.map((room) => Math.max(0, roomFloor(room).depth(x, y))));
  const spread = Math.max(...axes.map((at) => Math.max(Math.abs(at[0] - x), Math.abs(at[1] - y))));
  const least = 2 * (spread + radius) + 2;
  const side = Math.max(least, Math.min(TABLE_SIDE + 2 * spread, 2 * (free - OFF_WALL)));
  return withObject(plan, levelId, {
    id: CARRIER,
    name: 'Small table',
    shape: { box: { center: [x, y], width: side, depth: side, turn: 0 } },
    bottom: 0,
    top,
    ...topMark(answers),
  });
}

/** Marks a top whose height is not measured. */
const topMark = ({ support }: CardAnswers): Pick<PlanObject, 'topAnswered'> =>
  support?.top == null ? { topAnswered: false } : {};

export function middleOf(axes: readonly XY[]): XY {
  const mean = (k: 0 | 1) => axes.reduce((sum, point) => sum + point[k], 0) / axes.length;
  return [mean(0), mean(1)];
}

/**
 * Returns the plan with the shelf of the answers, if any, on the wall at its square.
 * @param carried axes of detectors that are known to stand on it: it reaches along its wall to them
 */
export function withShelf(
  plan: Plan,
  levelId: string,
  answers: CardAnswers,
  top: Mm,
  carried: readonly XY[] = [],
): Plan {
  const { support } = answers;
  const size = sizeOf(answers);
  if (support?.kind !== 'shelf' || !size) return plan;
  const side = sideOfSquare(support.square);
  if (!side) return plan;
  const { footprint } = OBJECT_DEFAULTS.shelf;
  const depth = 'depth' in footprint ? footprint.depth : 0;
  const isLevel = side === 'up' || side === 'down';
  const k = isLevel ? 0 : 1;
  const middle = shapeMiddle(areaOf(answers, support.square, size))[k];
  const half = (isLevel ? size.across : size.along) / SQUARES / 2;
  const from = Math.min(middle - half, ...carried.map((at) => at[k] - radius - 1));
  const to = Math.max(middle + half, ...carried.map((at) => at[k] + radius + 1));
  const far = isLevel ? size.along : size.across;
  const off = side === 'up' || side === 'left' ? depth / 2 : far - depth / 2;
  const center: XY = isLevel ? [(from + to) / 2, off] : [off, (from + to) / 2];
  const [width, deep] = isLevel ? [to - from, depth] : [depth, to - from];
  return withObject(plan, levelId, {
    id: CARRIER,
    name: 'Shelf',
    shape: { box: { center, width, depth: deep, turn: 0 } },
    bottom: Math.max(0, top - BOARD),
    top,
    ...topMark(answers),
  });
}

function withObject(plan: Plan, levelId: string, object: PlanObject): Plan {
  return {
    ...plan,
    levels: plan.levels.map((level) =>
      level.id === levelId ? { ...level, objects: [...level.objects, object] } : level,
    ),
  };
}
