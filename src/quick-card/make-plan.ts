import { withNoneHere } from '../../geometry/edit/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { capital, ROOM_USE_NOUN } from '../../geometry/plan/nouns.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import { publishedDistance } from '../../geometry/rules/profiles.ts';
import { withVisitStart } from '../protocol/custody/placed.ts';
import { instantText, type Ms } from '../protocol/timing/clock.ts';
import { hoursAreKnown, labDaysAreKnown } from '../protocol/timing/exposure-limits.ts';
import { withAnswers as withKitAnswers } from '../protocol/timing/kit-answers.ts';
import { answersOf, type CardAnswers, LEAFLET_RULES, type Leaflet, withAnswers } from './answers.ts';
import { farOpening, roomOpenings } from './room-openings.ts';
import { groupsDrawn, type RoomSize, roomFixtures, roomWalls, sizeOf } from './room-plan.ts';
import { scheduledStart, WAKING_HOURS } from './schedule.ts';
import { withSpot } from './spot.ts';
import { GROUPS, LEVELS } from './things.ts';

/**
 * Returns the plan of a quick card: one room, what is in it, and a detector at the best spot, or none where no spot is valid. Only what was
 * answered is recorded: a group that nobody looked for stays open, and without the leaflet's hours there are no times.
 * @param base a new plan, or one that a card made: what is recorded of its test is kept
 * @param now nothing is scheduled before it
 */
export function quickPlan(base: Plan, answers: CardAnswers, now: Ms): Plan {
  const levels = levelsOf(answers);
  const room = levels.at(-1) as Level;
  const plan = withNones({ ...settled(base, answers), levels }, room.id, answers, now);
  const placed = withAnswers(withSpot(plan, room.id, answers), answers);
  return hasBegun(base) ? placed : withStart(placed, answers, now);
}

/** Whether something of the test was written down: its times stay as they are. */
function hasBegun({ visit, readings, log = [] }: Plan): boolean {
  return visit.end !== null || visit.closedSince !== null || readings.length > 0 || log.length > 0;
}

/** Without a spot nothing is scheduled. */
function withStart(plan: Plan, answers: CardAnswers, now: Ms): Plan {
  const isPlaced = plan.levels.some(({ detectors }) => detectors.length > 0);
  const at = isPlaced ? scheduledStart(plan, answers, now) : null;
  const start = at === null ? null : instantText(at, plan.site.timeZone);
  return { ...plan, visit: withVisitStart(plan.visit, start, true) };
}

/** The plan without its levels: the leaflet, the purpose, the title. */
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
    practice: WAKING_HOURS,
  };
}

/** A title that a person gave. */
const isOwnTitle = (title: string): boolean => title.trim() !== '' && !title.startsWith('Quick card');

/**
 * Both hours of the leaflet answer what the kit allows; its days to the laboratory are an answer of their own. What the card before gave and
 * this one leaves out is open again; what was entered in the full app stays.
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

/** A leaflet's distance counts where it asks for more: the rule's own is never loosened by it. */
function overridesOf({ protocol }: Plan, { distances }: Leaflet): Plan['protocol']['overrides'] {
  return LEAFLET_RULES.flatMap((rule) => {
    const [wanted, published] = [distances[rule], publishedDistance(protocol.profile, rule)];
    if (wanted === undefined || published === null || wanted <= published) return [];
    return [{ rule, distance: wanted, note: "The kit's leaflet" }];
  });
}

/** The floor of the room, above the one below where the answer tells of one. */
function levelsOf(answers: CardAnswers): readonly Level[] {
  const row = answers.level === null ? null : LEVELS[answers.level];
  const below = row?.below ? [{ ...emptyLevel('L1'), ceilingAnswered: false, ...row.below, order: 0 }] : [];
  const bare: Level = {
    ...emptyLevel(`L${below.length + 1}`),
    ceilingAnswered: false,
    ...(row ? row.level : { livingAnswered: false, groundAnswered: false }),
    order: below.length,
  };
  const size = sizeOf(answers);
  return [...below, size ? drawnLevel(bare, answers, size) : bare];
}

function drawnLevel(bare: Level, answers: CardAnswers, size: RoomSize): Level {
  const walls = roomWalls(answers, size);
  const far = farOpening(answers, size);
  const { use } = answers;
  const at = [size.across / 2, size.along / 2] as const;
  return {
    ...bare,
    walls: far ? [...walls, far.wall] : walls,
    openings: [...roomOpenings(answers, walls, size), ...(far ? [far.opening] : [])],
    fixtures: roomFixtures(answers, size, bare),
    rooms: use === null ? [] : [{ id: 'r1', name: capital(ROOM_USE_NOUN[use]), use, at }],
  };
}

/** What was looked for and is not there; a group of which something is drawn needs no such answer. */
function withNones(plan: Plan, levelId: string, answers: CardAnswers, now: Ms): Plan {
  const drawn = groupsDrawn(answers);
  const look = { by: '', at: instantText(now, plan.site.timeZone) };
  return answers.none
    .filter((group) => GROUPS[group].rule !== null && !drawn.has(group))
    .reduce((next, group) => withNoneHere(next, levelId, group, look), plan);
}
