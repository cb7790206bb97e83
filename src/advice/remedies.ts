import { checkDetector } from '../../geometry/check/check-detector.ts';
import { levelBar } from '../../geometry/check/level.ts';
import { compareVerdicts } from '../../geometry/check/measure.ts';
import { roomAt } from '../../geometry/check/room.ts';
import { supports } from '../../geometry/check/support.ts';
import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { describeWay, listed } from '../../geometry/messages/index.ts';
import { openingMiddle, subjectName } from '../../geometry/messages/subject.ts';
import type { Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { direction } from '../../geometry/plane/bearing.ts';
import { distance } from '../../geometry/plane/point.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { JUST_INSIDE, nearestSpot } from '../../geometry/region/nearest.ts';
import { spotOnCarrier } from '../../geometry/search/on-carrier.ts';
import { formatLength, formatMeasured } from '../../geometry/units/index.ts';
import { pairMove } from './pair-move.ts';
import { spotBeside } from './spot-beside.ts';
import { lengthAsWritten, pointAlong } from './written-move.ts';

/** An action that improves the verdict of a detector with one press, and the words on its button. */
export type Remedy =
  | { readonly kind: 'move'; readonly words: string; readonly at: XY; readonly spare: boolean }
  /** Moves all detectors of a pair, by id, and keeps their spacing. */
  | { readonly kind: 'pair'; readonly words: string; readonly places: ReadonlyMap<string, XY>; readonly spare: boolean }
  | { readonly kind: 'height'; readonly words: string; readonly base: Mm }
  | { readonly kind: 'name-room'; readonly words: string; readonly at: XY }
  /** Marks openings, by id, whose curtain or blind stays closed. */
  | { readonly kind: 'cover'; readonly words: string; readonly ids: readonly string[] }
  | { readonly kind: 'level'; readonly words: string; readonly levelId: string };

const NONE: readonly Remedy[] = [];
/** Cached by report only: every edit that could change a remedy makes a new report. */
const remediesOf = new WeakMap<DetectorReport, readonly Remedy[]>();

/**
 * Returns remedies for a detector that is not clear: another height, a name for its room, the nearest valid spot, the nearest one that is
 * clear by more than the tape tolerance. A spot is offered only if its check agrees; a height if the checks of the height then pass, even
 * if others do not. Empty for a clear detector, and if nothing on the level helps.
 */
export function remediesFor(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  report: DetectorReport,
): readonly Remedy[] {
  if (report.verdict === 'clear') return NONE;
  const found = remediesOf.get(report);
  if (found) return found;
  const ways = search(plan, model, detector, report);
  remediesOf.set(report, ways);
  return ways;
}

function search(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): readonly Remedy[] {
  if (report.checks.some(({ rule, verdict }) => rule === 'level' && verdict === 'blocked')) return levelRemedy(plan);
  const height = heightRemedy(plan, model, detector, report);
  if (height) return [height];
  if (report.checks.some(({ rule, verdict }) => rule === 'room-use' && verdict === 'unknown')) {
    return [{ kind: 'name-room', words: 'Enter what this room is used for', at: detector.at }];
  }
  const beside = companionRemedy(plan, model, detector, report);
  if (beside) return [beside];
  const together = pairRemedies(plan, model, detector, report);
  const cover = coverRemedy(model, report, plan);
  if (together.length > 0) return [...together, ...cover];
  const near = report.verdict === 'blocked' ? moveRemedy(plan, model, detector, report, false) : null;
  const spare = moveRemedy(plan, model, detector, report, true);
  // With a tape tolerance of zero both are the same spot.
  return [...[near, spare].filter((way) => way !== null), ...cover];
}

/** Covers the openings whose direct sun blocks the detector. */
function coverRemedy(model: LevelModel, { checks }: DetectorReport, { site }: Plan): readonly Remedy[] {
  const rows = checks.filter(({ rule, verdict }) => rule === 'direct-sun' && verdict === 'blocked');
  const ids = [...new Set(rows.flatMap(({ subject }) => subject ?? []))];
  if (ids.length === 0) return NONE;
  const names = rows.map(({ subject, witness }) => {
    const to = openingMiddle(model.level, subject ?? '');
    return subjectName(model.level, subject ?? '', witness && to && { from: witness.rim, to, north: site });
  });
  return [{ kind: 'cover', words: `Keep ${listed([...new Set(names)])} covered during the test`, ids }];
}

/** Moves the whole pair: one detector moved alone would leave its companion. */
function pairRemedies(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): readonly Remedy[] {
  return [false, true].flatMap((spare): Remedy[] => {
    if (!spare && report.verdict !== 'blocked') return [];
    const move = pairMove(plan, model, detector, report, spare);
    return move ? [{ kind: 'pair', ...move, spare }] : [];
  });
}

/** Shows the lowest level that is to be tested: on this one nothing helps. */
function levelRemedy(plan: Plan): readonly Remedy[] {
  const [lowest] = plan.levels.filter((level) => levelBar(plan, level) === '').sort((a, b) => a.order - b.order);
  if (!lowest) return NONE;
  const name = lowest.name.trim() || 'the level';
  return [{ kind: 'level', words: `Show ${name}, where the test belongs`, levelId: lowest.id }];
}

/** Moves up to the least height or down to the greatest, if no check of the height is then blocked. */
function heightRemedy(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): Remedy | null {
  const worst = report.checks.find((check) => isHeight(check) && check.verdict === 'blocked');
  if (!worst || worst.margin === null) return null;
  const up = worst.rule === 'height-band' && worst.bound === 'least';
  const base = up ? detector.base - worst.margin : detector.base + worst.margin;
  const moved = checkDetector(plan, model, { ...detector, base });
  if (moved.checks.some((check) => isHeight(check) && check.verdict === 'blocked')) return null;
  const by = formatLength(-worst.margin, plan.display.length, 'up');
  const left =
    model.level.objects.some((object) => supports(object, detector)) &&
    !model.level.objects.some((object) => supports(object, { ...detector, base }));
  return {
    kind: 'height',
    words: `${up ? 'Raise' : 'Lower'} it ${by}${left ? ', where nothing carries it' : ''}`,
    base,
  };
}

function isHeight({ rule }: Check): boolean {
  return rule === 'height-band' || rule === 'ceiling';
}

/**
 * Moves to the nearest spot that passes; `spare`: to the nearest one that is clear by more than the tape tolerance. A detector on furniture
 * stays on it if there is such a spot, else the words say that nothing carries it there. Null if the check of the spot does not agree.
 */
function moveRemedy(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  report: DetectorReport,
  spare: boolean,
): Remedy | null {
  const { base, radius, tall, at } = detector;
  const beyond = JUST_INSIDE + (spare ? plan.tapeTolerance : 0);
  const better = (to: XY): boolean => {
    const { verdict } = checkDetector(plan, model, { ...detector, at: to });
    return spare ? verdict === 'clear' : compareVerdicts(verdict, report.verdict) > 0;
  };
  const tail = spare ? ', with tape to spare' : '';
  const carrier = model.level.objects.find((object) => supports(object, detector));
  const along = carrier && spotOnCarrier(plan, model, detector, carrier.id, beyond);
  if (carrier && along && better(along)) {
    const words = movedWords(plan, without(model, carrier.id), detector, along, report.room);
    return { kind: 'move', words: `${words}, on ${subjectName(model.level, carrier.id)}${tail}`, at: along, spare };
  }
  const spot = nearestSpot(levelRegion(plan, model, { base, radius, tall }, { spare: beyond }), at);
  if (!spot || !better(spot.at)) return null;
  const told = { ...spot, distance: spot.distance - JUST_INSIDE };
  // Moved by the length as written, rounded to the tape, it must not be blocked.
  const letter = pointAlong(at, spot.direction, lengthAsWritten(told.distance, plan.display.length));
  if (checkDetector(plan, model, { ...detector, at: letter }).verdict === 'blocked') return null;
  const words = `Move it ${describeWay(told, at, report.room, plan, model)}`;
  const left = carrier && !model.level.objects.some((object) => supports(object, { ...detector, at: spot.at }));
  return { kind: 'move', words: `${words}${left ? ', where nothing carries it' : ''}${tail}`, at: spot.at, spare };
}

/** The level without the carrier of a detector, so that a move is not described as toward it. */
function without(model: LevelModel, id: string): LevelModel {
  const { level } = model;
  return { ...model, level: { ...level, objects: level.objects.filter((object) => object.id !== id) } };
}

function movedWords(plan: Plan, model: LevelModel, { at }: Detector, to: XY, room: string | null): string {
  const own = roomAt(model, to);
  const spot = own && { at: to, room: own, distance: distance(at, to), direction: direction(at, to) };
  return spot ? `Move it ${describeWay(spot, at, room, plan, model)}` : 'Move it';
}

/** For a detector at a wrong distance from its companion: moves it to the best spot that `spotBeside` finds. */
function companionRemedy(plan: Plan, model: LevelModel, detector: Detector, report: DetectorReport): Remedy | null {
  const wrong = report.checks.find(({ rule, verdict }) => rule === 'companion' && verdict === 'blocked');
  const other = wrong && model.level.detectors.find(({ id }) => id === wrong.subject);
  if (!other) return null;
  const best = spotBeside(plan, model, detector, other);
  if (!best || compareVerdicts(best.verdict, report.verdict) <= 0) return null;
  const name = other.label.trim() || 'the other one';
  const length = (mm: Mm) => formatMeasured(mm, plan.display.length);
  const { insteadOf } = best;
  const worse = insteadOf?.verdict === 'blocked' ? 'does not fit' : `would be ${insteadOf?.verdict}`;
  const why = insteadOf ? `: ${length(insteadOf.gap)} ${worse} here` : '';
  const words = `Place it beside ${name}, ${length(best.gap)} from rim to rim${why}`;
  return { kind: 'move', words, at: best.at, spare: best.verdict === 'clear' };
}
