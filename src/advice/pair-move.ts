import { checkDetector } from '../../geometry/check/check-detector.ts';
import { compareVerdicts } from '../../geometry/check/measure.ts';
import { roomAt } from '../../geometry/check/room.ts';
import { supports } from '../../geometry/check/support.ts';
import type { Verdict } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { describeWay } from '../../geometry/messages/move.ts';
import type { Deg, Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { direction } from '../../geometry/plane/bearing.ts';
import { distance } from '../../geometry/plane/point.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { JUST_INSIDE, nearestSpot } from '../../geometry/region/nearest.ts';
import { lengthAsWritten, pointAlong } from './written-move.ts';

/** One move for all detectors of a pair, which keeps their spacing. */
export interface PairMove {
  readonly words: string;
  /** New places by id, all members. */
  readonly places: ReadonlyMap<string, XY>;
}

/** Rounds of moving the members in turn; further rounds find no place. */
const MOST_ROUNDS = 8;

/**
 * Returns a move of the pair of a detector to a place where every member passes (`spare`: is clear by more than the tape tolerance); null
 * if none is found, and for a single detector. Each member in turn moves to its nearest spot, and the others move with it.
 */
export function pairMove(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  report: { readonly verdict: Verdict; readonly room: string | null },
  spare: boolean,
): PairMove | null {
  const { detectors, objects } = model.level;
  const members = detectors.filter(({ pair }) => pair !== null && pair === detector.pair);
  if (members.length < 2) return null;
  const beyond = JUST_INSIDE + (spare ? plan.tapeTolerance : 0);
  for (const first of [detector, ...members.filter(({ id }) => id !== detector.id)]) {
    const moved = moveInTurn(plan, model, [first, ...members.filter((each) => each !== first)], beyond);
    const verdict = moved && worstOf(plan, model, moved);
    if (!moved || !verdict || (spare ? verdict !== 'clear' : compareVerdicts(verdict, report.verdict) <= 0)) continue;
    const own = moved.find(({ id }) => id === detector.id);
    const room = own && roomAt(model, own.at);
    if (!own || !room) continue;
    const spot = { at: own.at, room, ...moveTo(detector.at, own.at) };
    // Moved by the length as written, rounded to the tape, no member may be blocked.
    const letter = shifted(members, spot.direction, lengthAsWritten(spot.distance, plan.display.length));
    if (worstOf(plan, model, letter) === 'blocked') continue;
    const isCarried = (all: readonly Detector[]) => all.every((one) => objects.some((object) => supports(object, one)));
    const left = isCarried(members) && !isCarried(moved) ? ', where nothing carries them' : '';
    const way = describeWay(spot, detector.at, report.room, plan, model);
    return {
      words: `Move the pair together ${way}${left}${spare ? ', with tape to spare' : ''}`,
      places: new Map(moved.map(({ id, at }) => [id, at])),
    };
  }
  return null;
}

/** Distance and direction of a move for the text: without the margin by which a spot is inside its limit. */
function moveTo(from: XY, to: XY) {
  return { distance: Math.max(0, distance(from, to) - JUST_INSIDE), direction: direction(from, to) };
}

const shifted = (members: readonly Detector[], direction: Deg, far: Mm): readonly Detector[] =>
  members.map((each) => ({ ...each, at: pointAlong(each.at, direction, far) }));

function moveInTurn(plan: Plan, model: LevelModel, members: readonly Detector[], beyond: number) {
  let moved = members;
  for (let turn = 0, still = 0; turn < MOST_ROUNDS && still < members.length; turn++) {
    const one = moved[turn % moved.length] as Detector;
    const { base, radius, tall, at } = one;
    const spot = nearestSpot(levelRegion(plan, model, { base, radius, tall }, { spare: beyond }), at);
    if (!spot) return null;
    still = spot.distance === 0 ? still + 1 : 0;
    const [dx, dy] = [spot.at[0] - at[0], spot.at[1] - at[1]];
    moved = moved.map((each) => ({ ...each, at: [each.at[0] + dx, each.at[1] + dy] as const }));
  }
  return moved;
}

/** The worst verdict of the members at their new places. */
function worstOf(plan: Plan, { level, ...model }: LevelModel, moved: readonly Detector[]): Verdict | undefined {
  const detectors = level.detectors.map((each) => moved.find(({ id }) => id === each.id) ?? each);
  const there = { ...model, level: { ...level, detectors } };
  return moved.map((each) => checkDetector(plan, there, each).verdict).sort(compareVerdicts)[0];
}
