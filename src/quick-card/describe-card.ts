import { checkDetector } from '../../geometry/check/check-detector.ts';
import { levelsToTest } from '../../geometry/check/needed-locations.ts';
import { unmeasuredCarrier } from '../../geometry/check/support.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import { type NearGap, nearGaps, type Side } from '../../geometry/dimension/wall-gaps.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { headlineOf, SEND_THE_PLAN, type Tone, toneOf, worstTone } from '../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';
import { formatArea, formatMeasured, formatRequired } from '../../geometry/units/index.ts';
import { type Doubts, NO_DOUBTS } from '../state/second-opinion.ts';
import { gapWords } from '../state/side-by-side.ts';
import { type CardAnswers, NO_ANSWERS } from './answers.ts';
import { type LookPoint, lookPoints } from './look-points.ts';
import { answersNow, cardLevel, hasBegun } from './made-again.ts';
import { type NoSpot, noSpot, wrongHours } from './no-spot.ts';
import { heightBand, middleOf, modelOf, NO_REACH } from './spot.ts';
import { WALL_WORDS } from './square-words.ts';
import { EVERY } from './things.ts';
import { type CardTimes, cardTimes } from './times.ts';

/** The content of a quick card, derived from its plan only, so that later changes of the plan are shown. */
export interface QuickCard {
  readonly plan: Plan;
  readonly answers: CardAnswers;
  readonly level: Level;
  readonly model: LevelModel;
  readonly spot: CardSpot | null;
  /** Why there is no spot, and what would help; null if there is one. */
  readonly noSpot: NoSpot | null;
  readonly times: CardTimes;
}

export interface CardSpot {
  readonly detectors: readonly Detector[];
  /** Tone of the worst detector, as in the rest of the app; never clear while a point is open. */
  readonly tone: Tone;
  readonly headline: string;
  /** Distances from the middle of the detector, or of the pair, to the nearer wall on either axis. */
  readonly tapes: readonly TapeDistance[];
  readonly height: string;
  /** False if the height of the carrier is not measured: `height` is then a usual one. */
  readonly isMeasured: boolean;
  /** The allowed heights, in words. */
  readonly heights: string;
  /** Distance between two kits, with a period; null for one kit. */
  readonly gap: string | null;
  /** In which direction two kits are set beside each other, as seen from the entrance: a sentence; null for one kit. */
  readonly line: string | null;
  /** A sentence that the level needs more than one place; null if one is enough. */
  readonly places: string | null;
  /** A sentence with the rules that the plan loosens; null for none. */
  readonly loosened: string | null;
  readonly on: 'table' | 'shelf' | null;
  /** Distances to measure before it is placed: "at least 4 ft from the furnace". */
  readonly measure: readonly string[];
  readonly points: readonly LookPoint[];
  /** The points that were not looked at; while there are any, the tone is not clear. */
  readonly open: readonly LookPoint[];
}

interface TapeDistance {
  readonly side: Side;
  readonly line: NearGap['line'];
  readonly length: string;
  /** "from the left wall". */
  readonly from: string;
}

/**
 * Returns the content of the card of a plan. Its level is the one with a detector, else the highest.
 * @param doubts detectors on which the two computations differ: the card then has no spot
 */
export function describeCard(plan: Plan, doubts: Doubts = NO_DOUBTS): QuickCard {
  const answers = answersNow(plan) ?? NO_ANSWERS;
  const level = cardLevel(plan);
  const model = modelOf(plan, level.id);
  const doubt = level.detectors.flatMap(({ id }) => doubts.get(id)?.says ?? [])[0];
  const spot = doubt === undefined && !wrongHours(plan, answers) ? spotOf(plan, model, answers) : null;
  return {
    plan,
    answers,
    level,
    model,
    spot,
    noSpot: spot ? null : noSpotOf(plan, level, answers, doubt),
    times: cardTimes(plan, answers),
  };
}

function noSpotOf(plan: Plan, { id, detectors }: Level, answers: CardAnswers, doubt: string | undefined): NoSpot {
  if (doubt !== undefined) return { why: doubt, helps: [SEND_THE_PLAN] };
  if (detectors.length === 0) return noSpot(plan, id, answers);
  const hours = wrongHours(plan, answers);
  if (hours) return hours;
  return hasBegun(plan) ? PLACED_WRONG : MOVED;
}

/** For a plan that was changed after the card was made. */
const MOVED: NoSpot = {
  why: 'Where the kit is in the plan now, it is blocked, or the check cannot decide.',
  helps: [
    'Open it in the full app: the verdict says why.',
    'Or let the card find the best spot again: Change the answers, then Make the card.',
  ],
};

/** For answers or a plan that were changed after the placement. */
const PLACED_WRONG: NoSpot = {
  why: 'The kit is placed. By what you entered now, its place is blocked or cannot be decided.',
  helps: [
    'Measure again, and correct the answers where they are wrong.',
    'Where they are right, end this test: begin another card, and place a new kit at its spot.',
  ],
};

/** The spot of the detectors on the level; null if there are none, or one of them is blocked or unknown. */
function spotOf(plan: Plan, model: LevelModel, answers: CardAnswers): CardSpot | null {
  const { detectors } = model.level;
  const reports = detectors.map((detector) => checkDetector(plan, model, detector));
  const points = lookPoints(plan, model.level, reports, answers);
  const open = points.filter(({ isOpen }) => isOpen);
  const shown = open.length > 0 ? reports.map(asOpen) : reports;
  const tone = worstTone(shown);
  const [first] = detectors;
  if (!first || tone === null || tone === 'blocked' || tone === 'unknown') return null;
  const report = shown.find((each) => toneOf(each) === tone) as DetectorReport;
  return {
    detectors,
    tone,
    headline: headlineOf(report).word,
    tapes: tapesOf(plan, model),
    height: formatMeasured(first.base, plan.display.length),
    isMeasured: unmeasuredCarrier(model.level, first) === null,
    heights: heightsOf(plan, answers),
    gap: detectors.length > 1 ? gapWords(plan) : null,
    line: lineOf(detectors),
    places: placesOf(plan, model),
    loosened: loosenedOf(plan),
    on: answers.support?.kind ?? null,
    measure: toMeasure(plan, reports),
    points,
    open,
  };
}

/** A report for tone and headline only: the card asks more than the checks, and no report is shown as clear while a point is open. */
const asOpen = (report: DetectorReport): DetectorReport => ({
  ...report,
  checks: report.checks.map((check) => ({ ...check, notRun: true })),
});

function placesOf(plan: Plan, { level, rooms }: LevelModel): string | null {
  const needed = levelsToTest(plan).find((each) => each.level.id === level.id)?.needed ?? 1;
  if (needed < 2) return null;
  const area = rooms.reduce((sum, { floorArea }) => sum + floorArea, 0);
  return `One place is not enough: a room of ${formatArea(area, plan.display.length)} takes ${needed}. Check the two lengths of the room, or use the full app.`;
}

function loosenedOf({ protocol, display }: Plan): string | null {
  const words = effectiveRules(protocol)
    .filter(({ override }) => override?.loosened)
    .map(({ name, least, override }) => {
      const [own, published] = [least ?? 0, override?.published ?? 0].map((mm) => formatRequired(mm, display.length));
      return `${name.toLowerCase()} ${own} instead of ${published}`;
    });
  return words.length > 0 ? `Looser than published: ${words.join('; ')}.` : null;
}

function tapesOf(plan: Plan, model: LevelModel): readonly TapeDistance[] {
  const middle = middleOf(model.level.detectors.map(({ at }) => at));
  return nearGaps(model, middle, NO_REACH).map(({ side, gap, line }) => ({
    side,
    line,
    length: formatMeasured(gap, plan.display.length),
    from: `from the ${WALL_WORDS[side]}`,
  }));
}

/** Offsets from a line along the walls that nobody sees, mm. */
const IN_LINE = 1;

function lineOf(detectors: readonly Detector[]): string | null {
  const [a, b] = detectors.map(({ at }) => at).sort(([x1], [x2]) => x1 - x2);
  if (!a || !b) return null;
  if (Math.abs(a[1] - b[1]) < IN_LINE) return 'Set them in a line from left to right, as you see it when you come in.';
  if (b[0] - a[0] < IN_LINE) return 'Set one behind the other, as you see it when you come in.';
  return `Set them at a slant, as in the picture: the ${a[1] < b[1] ? 'left' : 'right'} one nearer to the far wall.`;
}

function heightsOf(plan: Plan, answers: CardAnswers): string {
  const { low, high } = heightBand(plan, answers);
  const unit = plan.display.length;
  return `between ${formatRequired(low, unit)} and ${formatRequired(high, unit, 'most')} above the floor`;
}

/** The distances of all rules that have a measured subject: the tape decides. */
function toMeasure({ protocol, display }: Plan, reports: readonly DetectorReport[]): readonly string[] {
  const measured = new Set(
    reports.flatMap(({ checks }) => checks.filter(({ witness }) => witness !== null).map(({ rule }) => rule)),
  );
  return effectiveRules(protocol).flatMap(({ id, least }) => {
    const every = EVERY[id];
    return every && (measured.has(id) || id === 'object') && least !== null
      ? [`at least ${formatRequired(least, display.length)} from ${every}`]
      : [];
  });
}
