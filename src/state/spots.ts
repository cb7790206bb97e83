import { checkDetector } from '../../geometry/check/check-detector.ts';
import { roomAt } from '../../geometry/check/room.ts';
import type { Check } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { describeAssumedTops } from '../../geometry/messages/assumed-top.ts';
import {
  checkFigures,
  checkSubject,
  describeReport,
  listed,
  type Tone,
  worstTone,
} from '../../geometry/messages/index.ts';
import { subjectName } from '../../geometry/messages/subject.ts';
import type { Detector, Level, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';
import { LIMIT_TOLERANCE } from '../../geometry/plane/tolerances.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { surfaceBelow } from '../../geometry/search/heights.ts';
import { limitCheck } from '../../geometry/search/limit-check.ts';
import { formatMeasured } from '../../geometry/units/index.ts';
import type { BestPlace } from '../platform/worker/place-query.ts';
import { refuseLocked } from './locked-detectors.ts';
import { selectLevel } from './selectors.ts';
import { withDetectors, withGroupMoved } from './side-by-side.ts';
import { useAppStore } from './store.ts';

/** A good place, in words. */
export interface PlaceWords {
  readonly room: string;
  /** "on the desk"; "on the shelf, 3 ft 2 in up" if that is not the height of the probe; empty if no object is under it. */
  readonly on: string;
  /** A note that the height of the carrying object is not measured; empty if it is. */
  readonly assumed: string;
  /** "2 ft 4 in to spare at the return grille"; if a detector would be blocked beside the others on the level, what blocks it. */
  readonly spare: string;
  /** The worst verdict of its detectors, by all of their checks. */
  readonly tone: Tone;
  /** The check that limits it, with its measured line; null for none. */
  readonly limit: Check | null;
  /** Labels of the detectors that are there already. */
  readonly taken: readonly string[];
}

/**
 * Describes a good place: where it is, how much it has to spare, and its verdict.
 * @param moved the detectors that would move there, in the order of its axes; none if new ones would be set
 */
export function describePlace(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  place: BestPlace,
  moved: readonly Detector[] = [],
): PlaceWords {
  const { level } = model;
  const { axes, base, limitedBy } = place;
  const limit = limitedBy && limitCheck(plan, model, { ...probe, base }, axes, limitedBy);
  const room = axes[0] && roomAt(model, axes[0]);
  const { tone, blocked } = worstAt(plan, model, probe, place, moved);
  return {
    room: room?.label?.name.trim() || 'Room without a name',
    on: carrierWords(plan, model, probe, place),
    assumed: describeAssumedTops(level, axes, { ...probe, base }, plan.display.length),
    spare: blocked || (limit ? spareWords(plan, level, limit) : 'Nothing to keep away from'),
    tone,
    limit,
    taken: level.detectors
      .filter(({ at, radius }) => axes.some((axis) => distance(axis, at) < radius + probe.radius))
      .map(nameOf),
  };
}

/** A good place with its words. */
export interface DescribedPlace {
  readonly place: BestPlace;
  readonly words: PlaceWords;
}

/** Returns the places in their order, but last those where a detector would be blocked beside the others on the level. */
export function blockedLast(places: readonly DescribedPlace[]): readonly DescribedPlace[] {
  const isBlocked = ({ words }: DescribedPlace) => words.tone === 'blocked';
  return [...places.filter((each) => !isBlocked(each)), ...places.filter(isBlocked)];
}

function carrierWords(plan: Plan, model: LevelModel, probe: Probe, { axes, base }: BestPlace): string {
  const carriers = axes.flatMap((at) => {
    const carrier = surfaceBelow(model, at, probe.radius);
    return carrier && Math.abs(carrier.top - base) < LIMIT_TOLERANCE ? [carrier.object.id] : [];
  });
  if (carriers.length === 0) return '';
  // One detector of a pair at the edge of a table may be off the table.
  const some = carriers.length < axes.length ? `${carriers.length} of ${axes.length} ` : '';
  const name = `${some}on ${listed([...new Set(carriers)].map((id) => subjectName(model.level, id)))}`;
  return Math.abs(base - probe.base) < LIMIT_TOLERANCE
    ? name
    : `${name}, ${formatMeasured(base, plan.display.length)} up`;
}

function spareWords(plan: Plan, level: Level, limit: Check): string {
  // A required distance of 0 is that of a stream of air.
  const of = limit.required === 0 ? 'of' : 'at';
  return `${checkFigures(limit, plan).spare} ${of} ${checkSubject(limit, plan, level)}`;
}

/** Returns the worst verdict of detectors at a place, beside the others on the level, and what blocks one of them ("": nothing). */
function worstAt(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  place: BestPlace,
  moved: readonly Detector[],
): { tone: Tone; blocked: string } {
  const setting = { ...probe, ...place };
  const ids = moved.map(({ id }) => id);
  // Detectors that would move there are moved, not added, so that they block nothing at their present place.
  const grown =
    ids.length > 0
      ? withGroupMoved(plan, model.level.id, ids, setting)
      : withDetectors(plan, model.level.id, setting, null).plan;
  const level = grown.levels.find(({ id }) => id === model.level.id) ?? model.level;
  const judged =
    ids.length > 0 ? level.detectors.filter(({ id }) => ids.includes(id)) : level.detectors.slice(-place.axes.length);
  const reports = judged.map((detector) => checkDetector(grown, { ...model, level }, detector));
  const blocked = reports.find(({ verdict }) => verdict === 'blocked');
  return { tone: worstTone(reports) ?? 'unknown', blocked: blocked ? describeReport(blocked, grown, level) : '' };
}

/** Adds new detectors at a place and selects them: one step of history. Returns the reason of a refusal, in words; empty on success. */
export function setPlace(place: BestPlace, probe: Probe): string {
  const state = useAppStore.getState();
  const { plan, added } = withDetectors(state.plan, selectLevel(state).id, { ...probe, ...place }, null);
  const refusal = state.run(() => plan);
  if (!refusal) state.select(added.map(({ id }) => id));
  return refusal;
}

/**
 * Moves a detector, or several side by side, to a place: one step of history. Returns the reason of a refusal, in words; empty on success.
 */
export function moveToPlace(detectors: readonly Detector[], place: BestPlace, probe: Probe): string {
  const state = useAppStore.getState();
  const ids = detectors.map(({ id }) => id);
  const stands = detectors.every(({ at, base }, index) => isAt(place, index, at, base));
  if (stands) {
    state.say(`${listed(detectors.map(nameOf))} ${detectors.length > 1 ? 'stand' : 'stands'} there already.`);
    return '';
  }
  const locked = refuseLocked(state, ids);
  if (locked) return locked;
  const levelId = selectLevel(state).id;
  const refusal = state.run((plan) => withGroupMoved(plan, levelId, ids, { ...probe, ...place }));
  if (!refusal) state.select(ids);
  return refusal;
}

/** Whether a point and a height are those of one detector of a place. */
function isAt({ axes, base }: BestPlace, index: number, at: XY, height: Mm): boolean {
  const axis = axes[index];
  return axis !== undefined && distance(axis, at) < LIMIT_TOLERANCE && Math.abs(base - height) < LIMIT_TOLERANCE;
}

function nameOf({ label }: Detector): string {
  return label.trim() || 'One without a label';
}
