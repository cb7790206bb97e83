/** A card that is made again from changed answers keeps what its plan has recorded since. */

import { nearGaps } from '../../geometry/dimension/wall-gaps.ts';
import { sunWordOf } from '../../geometry/edit/answers.ts';
import { withNoneHere, withoutNoneHere } from '../../geometry/edit/index.ts';
import type { Detector, Level, Plan, XY } from '../../geometry/plan/model.ts';
import { recordedStart } from '../protocol/custody/placed.ts';
import { answersOf, type CardAnswers, GROUP_IDS } from './answers.ts';
import { drawnLevels } from './levels.ts';
import { CARRIER, middleOf, modelOf, NO_REACH, withShelf, withTable } from './spot.ts';
import { GROUPS, THINGS } from './things.ts';

/** Returns the level of a card's plan: the one with a detector, else the highest. */
export function cardLevel({ levels }: Plan): Level {
  const highest = levels.reduce((a, b) => (b.order > a.order ? b : a));
  return levels.find(({ detectors }) => detectors.length > 0) ?? highest;
}

/** Returns whether the test has begun: placement, pick-up or a result is recorded. */
export const hasBegun = ({ visit, readings }: Plan): boolean =>
  recordedStart(visit) !== null || visit.end !== null || readings.length > 0;

/** Returns the current answers of a plan, with those given or withdrawn in the full app. Null for a plan without a card. */
export function answersNow(plan: Plan): CardAnswers | null {
  const answers = answersOf(plan);
  if (!answers) return null;
  const level = cardLevel(plan);
  const { lookedFor = [], ceiling, ceilingAnswered } = level;
  const none = GROUP_IDS.filter((group) =>
    GROUPS[group].rule === null ? answers.none.includes(group) : lookedFor.includes(group),
  );
  const support = supportNow(level, answers);
  return { ...answers, none, support, ceiling: ceilingAnswered === false ? answers.ceiling : ceiling };
}

/** The carrier of the kit, with the height of its top if that was measured since. */
function supportNow({ objects }: Level, { support }: CardAnswers): CardAnswers['support'] {
  const carrier = objects.find(({ id }) => id === CARRIER);
  if (!support || !carrier || carrier.topAnswered === false) return support;
  return { ...support, top: carrier.top };
}

/** Returns whether the plan of a card has drawn things that its answers do not have, which making the card again would lose. */
export function isDrawnOn(plan: Plan): boolean {
  const answers = answersNow(plan);
  if (!answers) return false;
  const own = drawnLevels(answers, plan.protocol);
  return JSON.stringify(plan.levels.map(drawingOf)) !== JSON.stringify(own.map(drawingOf));
}

/** The drawing without the parts that a card adds: kits and their carrier. */
function drawingOf({ id, walls, openings, fixtures, rooms, objects }: Level): unknown {
  return { id, walls, openings, fixtures, rooms, objects: objects.filter((object) => object.id !== CARRIER) };
}

/**
 * Returns the plan with the kits where they were placed: they keep their tape distances, even if a length of the room is corrected, and get
 * a height that was measured since. What they stand on stays below them.
 * @param before the plan that records them as placed
 */
export function withKitsKept(plan: Plan, levelId: string, before: Plan, answers: CardAnswers): Plan {
  const level = cardLevel(before);
  const { detectors } = level;
  if (detectors.length === 0) return plan;
  const old = answersOf(before);
  const [dx, dy] = shiftOf(before, level, old, answers);
  const top = answers.support?.top ?? null;
  const measured = top !== null && top !== old?.support?.top ? top : null;
  const kept = detectors.map(
    (one): Detector => ({ ...one, at: [one.at[0] + dx, one.at[1] + dy], base: measured ?? one.base }),
  );
  const axes = kept.map(({ at }) => at);
  const { base } = kept[0] as Detector;
  const carried =
    answers.support?.kind === 'table'
      ? withTable(plan, levelId, answers, base, axes)
      : withShelf(plan, levelId, answers, base, isSameShelf(old, answers) ? axes : []);
  return {
    ...carried,
    levels: carried.levels.map((each) => (each.id === levelId ? { ...each, detectors: kept } : each)),
  };
}

/** The shift of the kits on the page, mm, with which the tape distances on the card keep their lengths. */
function shiftOf(before: Plan, level: Level, old: CardAnswers | null, { across, along }: CardAnswers): XY {
  const grown = (from: number | null | undefined, to: number | null) => (from == null || to === null ? 0 : to - from);
  const sides = nearGaps(modelOf(before, level.id), middleOf(level.detectors.map(({ at }) => at)), NO_REACH).map(
    ({ side }) => side,
  );
  return [
    sides.includes('right') ? grown(old?.across, across) : 0,
    sides.includes('down') ? grown(old?.along, along) : 0,
  ];
}

const isSameShelf = (old: CardAnswers | null, { support }: CardAnswers): boolean =>
  support?.kind === 'shelf' && old?.support?.kind === 'shelf' && old.support.square === support.square;

/** Returns the plan with the recorded observers and times; the answer about direct sun is kept only if spot and windows are the same. */
export function withLooksKept(plan: Plan, levelId: string, before: Plan): Plan {
  const earlier = cardLevel(before);
  const now = plan.levels.find(({ id }) => id === levelId) as Level;
  const looks = earlier.lookedForBy ?? [];
  const signed = (now.lookedForBy ?? []).map((look) => looks.find(({ rule }) => rule === look.rule) ?? look);
  const kept = signed.reduce((next, { rule, by, at }) => withNoneHere(next, levelId, rule, { by, at }), plan);
  if (!earlier.lookedFor?.includes('direct-sun') || !isSameSpot(before, plan))
    return withoutNoneHere(kept, levelId, ['direct-sun']);
  const look = looks.find(({ rule }) => rule === 'direct-sun') ?? { by: '', at: null };
  return withNoneHere(kept, levelId, 'direct-sun', { sun: sunWordOf(before), ...look });
}

/** Compares the facts that the answer about direct sun depends on: the places of the kits in the room, and the openings. */
function isSameSpot(before: Plan, after: Plan): boolean {
  const tell = (plan: Plan) => {
    const { across, along, things = [] } = answersOf(plan) ?? {};
    const windows = things.filter(({ kind }) => THINGS[kind].group === 'outside-opening');
    const kits = cardLevel(plan).detectors.map(({ at, base }) => ({ at, base }));
    return JSON.stringify({ across, along, windows, kits });
  };
  return tell(before) === tell(after);
}
