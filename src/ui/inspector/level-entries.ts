import type { DetectorReport } from '../../../geometry/check/types.ts';
import type { TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import {
  capital,
  FIXTURE_NOUN,
  headlineText,
  LIVING_PHRASE,
  ROOM_USE_NOUN,
  TONE_WORD,
  type Tone,
  toneOf,
} from '../../../geometry/messages/index.ts';
import { spokenName } from '../../../geometry/messages/spoken-name.ts';
import { TAPED_BY_WORDS } from '../../../geometry/messages/taped-by.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { levelHeading } from '../../../geometry/plan/nouns.ts';
import { formatLength, formatMeasured, type LengthUnit } from '../../../geometry/units/index.ts';

/** A row of the list of the level. */
export interface Entry {
  readonly id: string;
  readonly name: string;
  readonly detail: string;
  /** Verdict of a detector. */
  readonly tone?: Tone;
  /** Set for a level: a press shows it. */
  readonly isLevel?: true;
}
export interface Group {
  readonly name: string;
  readonly entries: readonly Entry[];
}

/** Returns the levels, lowest first; no entries if there is only one. */
export function levelGroup(plan: Plan): Group {
  const levels = [...plan.levels].sort((a, b) => a.order - b.order);
  const entries = levels.map((level): Entry => {
    return { id: level.id, name: levelHeading(level), detail: LIVING_PHRASE[level.living], isLevel: true };
  });
  return { name: 'Levels', entries: levels.length > 1 ? entries : [] };
}

/** Returns all items of a level in groups, including empty groups. The names are those used in announcements. */
export function itemGroups(
  model: LevelModel,
  reports: readonly DetectorReport[],
  unit: LengthUnit,
  by: TapedBy,
): readonly Group[] {
  const { level } = model;
  const named = (id: string, detail: string): Entry => ({ id, name: capital(spokenName(level, model, id)), detail });
  return [
    {
      name: 'Detectors',
      entries: level.detectors.map(({ id, label }) => {
        const report = reports.find((each) => each.id === id);
        const tone = report ? toneOf(report) : 'unknown';
        const detail = report ? headlineText(report) : TONE_WORD[tone];
        return { id, name: label.trim() || 'No label', detail, tone };
      }),
    },
    {
      name: 'Rooms',
      entries: level.rooms.map(({ id, name, use }) => ({
        id,
        name: name.trim() || 'No name',
        detail: ROOM_USE_NOUN[use],
      })),
    },
    {
      name: 'Walls',
      entries: level.walls.map((wall) =>
        named(wall.id, `${formatMeasured(wallLengths(model, wall)[by], unit)} ${TAPED_BY_WORDS[by]}`),
      ),
    },
    {
      name: 'Openings',
      entries: level.openings.map(({ id, width }) => named(id, `${formatLength(width, unit)} wide`)),
    },
    {
      name: 'Air, heat, water',
      entries: level.fixtures.map(({ id, kind, name }) => named(id, name.trim() ? FIXTURE_NOUN[kind] : '')),
    },
    {
      name: 'Objects',
      entries: level.objects.map(({ id, name, top }) => ({
        id,
        name: name.trim() || 'No name',
        detail: `up to ${formatLength(top, unit)}`,
      })),
    },
  ];
}
