import { withNoneHere } from '../../geometry/edit/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { ROOM_USE_NOUN } from '../../geometry/plan/nouns.ts';
import { publishedDistance } from '../../geometry/rules/profiles.ts';
import { withVisitStart } from '../protocol/custody/placed.ts';
import { instantText, type Ms, msOf } from '../protocol/timing/clock.ts';
import { hoursAreKnown, labDaysAreKnown } from '../protocol/timing/exposure-limits.ts';
import { withAnswers as withKitAnswers } from '../protocol/timing/kit-answers.ts';
import { answersOf, type CardAnswers, LEAFLET_RULES, type Leaflet, withAnswers } from './answers.ts';
import { drawnLevels } from './levels.ts';
import { hasBegun, withKitsKept, withLooksKept } from './made-again.ts';
import { groupsDrawn } from './room-plan.ts';
import { scheduledStart, WAKING_HOURS } from './schedule.ts';
import { withSpot } from './spot.ts';
import { GROUPS } from './things.ts';

/**
 * Returns the plan of a quick card: one room, the things in it, and a detector at the best spot, or none if no spot is valid. Only answers
 * are recorded: a group that was not answered stays open, and without the leaflet's hours there are no times.
 * @param base a new plan, or one that a card made: the records of its test are kept, and a placed kit keeps its place
 * @param now ms: nothing is scheduled earlier
 */
export function quickPlan(base: Plan, answers: CardAnswers, now: Ms): Plan {
  const set = settled(base, answers);
  const levels = drawnLevels(answers, set.protocol);
  const { id } = levels.at(-1) as Level;
  const plan = withNones({ ...set, levels }, id, answers, now);
  const hasKits = base.levels.some(({ detectors }) => detectors.length > 0);
  if (hasBegun(base) && hasKits) {
    return withLooksKept(withAnswers(withKitsKept(plan, id, base, answers), answers), id, base);
  }
  const placed = withLooksKept(withAnswers(withSpot(plan, id, answers), answers), id, base);
  return hasBegun(base) ? placed : withStart(placed, base, answers, now);
}

/**
 * The plan with its placement planned. Without a spot nothing is scheduled. A start with records before the placement is kept while closing
 * and hours are the same.
 */
function withStart(plan: Plan, base: Plan, answers: CardAnswers, now: Ms): Plan {
  const isPlaced = plan.levels.some(({ detectors }) => detectors.length > 0);
  const { closedSince, start } = base.visit;
  const isRecorded = closedSince !== null || (base.log ?? []).length > 0;
  if (isPlaced && isRecorded && start !== null && hasSameTimes(answersOf(base), answers)) return plan;
  const at = isPlaced ? scheduledStart(plan, answers, now) : null;
  const planned = at === null ? null : instantText(at, plan.site.timeZone);
  const visit = withVisitStart(plan.visit, planned, true);
  return { ...plan, visit: isLater(answers.closing, closedSince) ? { ...visit, closedSince: null } : visit };
}

/** Whether the house is to be closed later than recorded: it was opened in between, or will be. */
function isLater(closing: string | null, closedSince: string | null): boolean {
  const [planned, recorded] = [msOf(closing), msOf(closedSince)];
  return planned !== null && recorded !== null && planned > recorded;
}

const hasSameTimes = (before: CardAnswers | null, { closing, leaflet }: CardAnswers): boolean =>
  msOf(before?.closing) === msOf(closing) &&
  before?.leaflet.minimumHours === leaflet.minimumHours &&
  before?.leaflet.maximumHours === leaflet.maximumHours;

/** The plan with everything from the answers but the levels: title, unit, purpose, kit, distances. */
function settled(base: Plan, answers: CardAnswers): Plan {
  const { leaflet, unit, use } = answers;
  const { purposeAnswered: _, ...site } = base.site;
  return {
    ...base,
    title: isOwnTitle(base.title) ? base.title : ['Quick card', use && ROOM_USE_NOUN[use]].filter(Boolean).join(', '),
    display: { ...base.display, length: unit },
    site: { ...site, purpose: 'own-household' },
    protocol: { ...base.protocol, overrides: overridesOf(base, leaflet) },
    kit: kitOf(base, leaflet),
    practice: base.practice ?? WAKING_HOURS,
  };
}

/** Whether a person gave the title. */
const isOwnTitle = (title: string): boolean => title.trim() !== '' && !title.startsWith('Quick card');

/**
 * The kit with the figures of the leaflet. Its hours are answered if the leaflet has both; the days to the laboratory are a separate answer.
 * A figure that the earlier card had and this one does not is open again; figures from the full app are kept.
 */
function kitOf(base: Plan, leaflet: Leaflet): Plan['kit'] {
  const before = answersOf(base)?.leaflet;
  const kit = { ...base.kit, ...hoursOf(base, leaflet), labDays: leaflet.labDays ?? base.kit.labDays };
  return withKitAnswers(
    kit,
    givesHours(leaflet) || (hoursAreKnown(base) && !(before && givesHours(before))),
    leaflet.labDays !== null || (labDaysAreKnown(base) && before?.labDays == null),
  );
}

const givesHours = ({ minimumHours, maximumHours }: Leaflet): boolean => minimumHours !== null && maximumHours !== null;

/** Hours that contradict each other are left out, and the card has no times. */
function hoursOf({ kit }: Plan, leaflet: Leaflet): Pick<Plan['kit'], 'minimumHours' | 'maximumHours'> {
  const [least, most] = [leaflet.minimumHours ?? kit.minimumHours, leaflet.maximumHours ?? kit.maximumHours];
  const { minimumHours, maximumHours } = least <= most ? { minimumHours: least, maximumHours: most } : kit;
  return { minimumHours, maximumHours };
}

const LEAFLET_NOTE = "The kit's leaflet";

/**
 * A leaflet's distance is used only if it is greater: it loosens neither the published distance nor one that was set in the full app.
 */
function overridesOf({ protocol }: Plan, { distances }: Leaflet): Plan['protocol']['overrides'] {
  const own = protocol.overrides.filter(({ note }) => note !== LEAFLET_NOTE);
  const copied = LEAFLET_RULES.flatMap((rule) => {
    const [wanted, published] = [distances[rule], publishedDistance(protocol.profile, rule)];
    if (wanted === undefined || published === null || wanted <= published) return [];
    return own.some((one) => one.rule === rule && one.distance >= wanted)
      ? []
      : [{ rule, distance: wanted, note: LEAFLET_NOTE }];
  });
  return [...own.filter(({ rule }) => !copied.some((one) => one.rule === rule)), ...copied];
}

/** The plan with the answers "none"; a group with a drawn thing needs none. */
function withNones(plan: Plan, levelId: string, answers: CardAnswers, now: Ms): Plan {
  const drawn = groupsDrawn(answers);
  const look = { by: '', at: instantText(now, plan.site.timeZone) };
  return answers.none
    .filter((group) => GROUPS[group].rule !== null && !drawn.has(group))
    .reduce((next, group) => withNoneHere(next, levelId, group, look), plan);
}
