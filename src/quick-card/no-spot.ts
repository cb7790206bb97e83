import { levelBar } from '../../geometry/check/level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { listed } from '../../geometry/plan/nouns.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { type FurnitureVerdict, furnitureVerdict } from '../../geometry/search/furniture.ts';
import { formatMeasured, formatRequired } from '../../geometry/units/index.ts';
import { type CardAnswers, GROUP_IDS, type GroupId } from './answers.ts';
import { NEEDED_WORDS, neededAnswers } from './needed.ts';
import { groupsDrawn, leastOf, sideOfSquare, wallId } from './room-plan.ts';
import { hoursTrouble } from './schedule.ts';
import { axesFor, heightBand, isInBand, modelOf, topOf } from './spot.ts';
import { EVERY, GROUPS, THINGS } from './things.ts';

/** Why a card has no spot, and what would help. */
export interface NoSpot {
  readonly why: string;
  readonly helps: readonly string[];
}

const OTHER_ROOM =
  'Take another room on this floor: a bedroom, family room, living room or home office is usual; a kitchen, bathroom, laundry or hall is not.';

/** Returns the first reason why the plan of these answers has no detector, and what would help. */
export function noSpot(plan: Plan, levelId: string, answers: CardAnswers): NoSpot {
  const needed = neededAnswers(answers);
  if (needed.length > 0) {
    const asked = listed(needed.map((each) => NEEDED_WORDS[each]));
    return { why: `Not answered yet: ${asked}.`, helps: ['Answer it, and the card finds the spot.'] };
  }
  const model = modelOf(plan, levelId);
  return (
    wrongHours(plan, answers) ??
    wrongLevel(plan, model.level) ??
    wrongHeight(plan, answers) ??
    wrongRoom(plan, model, answers) ??
    wrongShelf(plan, model, answers) ??
    noRoomLeft(plan, model, answers)
  );
}

/** Returns the reason if no test can meet the hours of the leaflet; null if one can, or if they are not known. */
export function wrongHours(plan: Plan, { leaflet }: CardAnswers): NoSpot | null {
  const trouble = hoursTrouble(plan, leaflet);
  return trouble && { why: trouble.why, helps: [trouble.help] };
}

function wrongLevel(plan: Plan, level: Level): NoSpot | null {
  const bar = levelBar(plan, level);
  if (!bar) return null;
  return { why: bar, helps: ['Test on the lowest floor that somebody lives on, in a room there.'] };
}

function wrongHeight(plan: Plan, answers: CardAnswers): NoSpot | null {
  const band = heightBand(plan, answers);
  const top = topOf(plan, answers);
  const unit = plan.display.length;
  if (band.low > band.high) {
    const byLeaflet = heightBand(plan, { ...answers, ceiling: null });
    if (byLeaflet.low <= byLeaflet.high) {
      return { why: 'Under this ceiling no height is left for a kit.', helps: ['Check its height again.', OTHER_ROOM] };
    }
    return {
      why: 'The heights that were copied from the leaflet leave no height that is usual for a test.',
      helps: ['Check the two heights again. Where the leaflet really says so, ask the laboratory.'],
    };
  }
  if (isInBand(band, top)) return null;
  return {
    why: `A top ${formatMeasured(top, unit)} above the floor is too ${top < band.low ? 'low' : 'high'}.`,
    helps: [
      `Use one between ${formatRequired(band.low, unit)} and ${formatRequired(band.high, unit, 'most')} above the floor.`,
    ],
  };
}

function probeOf(plan: Plan, answers: CardAnswers): Probe {
  const { radius, tall } = USUAL_DETECTOR;
  return { base: topOf(plan, answers), radius, tall };
}

function wrongRoom(plan: Plan, model: LevelModel, answers: CardAnswers): NoSpot | null {
  const [room] = levelRegion(plan, model, probeOf(plan, answers)).rooms;
  if (!room) return { why: 'The walls enclose no floor.', helps: ['Check the two lengths of the room again.'] };
  return room.barred ? { why: room.barred, helps: [OTHER_ROOM] } : null;
}

/** The reasons name what the householder pressed: they know no compass points of the room, and do not move a shelf off its wall. */
function wrongShelf(plan: Plan, model: LevelModel, answers: CardAnswers): NoSpot | null {
  const { support, kits } = answers;
  if (support?.kind !== 'shelf') return null;
  const [shelf] = model.level.objects;
  if (!shelf) return { why: 'It is not marked where the shelf is.', helps: ['Press the wall that it is on.'] };
  const step = plan.display.length === 'metric' ? 50 : 25.4;
  const verdict = furnitureVerdict(plan, model, shelf, USUAL_DETECTOR, kits, step);
  if (verdict.kind === 'good') return null;
  if (isOnExteriorWall(model.level, support.square)) {
    const least = formatRequired(leastOf(plan.protocol, 'outside-wall'), plan.display.length);
    return {
      why: `A shelf on an exterior wall is too near to it: ${kits === 1 ? 'the kit has' : 'the kits have'} to be ${least} from the wall, and a shelf is about as deep.`,
      helps: [`Press a shelf on a wall that has another room of the house behind it. ${MOVABLE}`, OTHER_ROOM],
    };
  }
  return {
    why: nearShelf(plan, verdict, kits),
    helps: [`Press another shelf, if there is one. ${MOVABLE}`, OTHER_ROOM],
  };
}

const MOVABLE = 'Or choose a small table, that can be moved to the best spot.';

function isOnExteriorWall({ walls }: Level, square: string): boolean {
  const side = sideOfSquare(square);
  return walls.some(({ id, side: is }) => side !== null && id === wallId(side) && is !== 'inside');
}

function nearShelf({ protocol, display }: Plan, verdict: FurnitureVerdict, kits: 1 | 2): string {
  if (verdict.kind !== 'near') {
    return kits === 1 ? 'There is no room for a kit on that shelf.' : 'There is no room for two kits on that shelf.';
  }
  const rule = verdict.check?.rule;
  const every = rule && EVERY[rule];
  if (!rule || !every) return 'That shelf has no spot for a kit.';
  const least = formatRequired(leastOf(protocol, rule), display.length);
  return `No spot on that shelf: it has to be at least ${least} from ${every}.`;
}

/** The reason if things block the whole room, with the groups whose removal alone would give a spot. */
function noRoomLeft(plan: Plan, model: LevelModel, answers: CardAnswers): NoSpot {
  const drawn = GROUP_IDS.filter((group) => groupsDrawn(answers).has(group));
  const alone = drawn.filter((group) => hasSpot(plan, without(plan, model, group), answers));
  const helps = [
    'Measure the room again: with a length that is a foot too short, a small room has no spot.',
    OTHER_ROOM,
  ];
  if (alone.length > 0) {
    const names = listed(alone.map((group) => GROUPS[group].every));
    return {
      why: `No spot in this room is far enough from everything in it: ${alone.map((group) => limitOf(plan, group)).join(', ')}.`,
      helps: [`Mark only the squares that are really taken by ${names}.`, ...helps],
    };
  }
  return { why: 'No spot in this room is far enough from its walls and from everything in it.', helps };
}

/** "4 ft from heaters". */
function limitOf(plan: Plan, group: GroupId): string {
  return `${formatRequired(leastOf(plan.protocol, group), plan.display.length)} from ${GROUPS[group].every}`;
}

function without(plan: Plan, model: LevelModel, group: GroupId): LevelModel {
  const { level } = model;
  const bare: Level = {
    ...level,
    openings: group === 'outside-opening' ? [] : level.openings,
    fixtures: level.fixtures.filter(({ name }) => !namesOf(group).some((words) => name.startsWith(words))),
  };
  return modelOf({ ...plan, levels: [bare] }, bare.id);
}

const namesOf = (group: GroupId): readonly string[] =>
  Object.values(THINGS).flatMap((row) => (row.group === group ? [row.name] : []));

function hasSpot(plan: Plan, model: LevelModel, answers: CardAnswers): boolean {
  return axesFor(plan, model, probeOf(plan, answers), answers) !== null;
}
