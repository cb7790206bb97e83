import type { DetectorReport } from '../../../geometry/check/types.ts';
import type { TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import {
  capital,
  FIXTURE_NOUN,
  headlineText,
  OPENING_NOUN,
  ROOM_USE_NOUN,
  TONE_WORD,
  type Tone,
  toneOf,
} from '../../../geometry/messages/index.ts';
import { TAPED_BY_WORDS } from '../../../geometry/messages/taped-by.ts';
import { formatLength, formatMeasured, type LengthUnit } from '../../../geometry/units/index.ts';
import { openMenuOfRow } from '../../editor/open-menu.ts';
import { selectModel } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';

interface Entry {
  readonly id: string;
  readonly name: string;
  readonly detail: string;
  /** Of a detector. */
  readonly tone?: Tone;
}
interface Group {
  readonly name: string;
  readonly entries: readonly Entry[];
}

/** Rendered only while the list is open: a level may hold hundreds of items. */
export function ItemGroups() {
  const model = useThrottled(selectModel);
  const by = useAppStore(({ wallSettings }) => wallSettings.by);
  const reports = useThrottled(shownReports);
  const unit = useAppStore((state) => state.plan.display.length);
  return groupsOf(model, reports, unit, by).map(({ name, entries }) => (
    <section key={name} className="items" aria-label={name}>
      <h3>{name}</h3>
      <ul>
        {entries.map((entry) => (
          <li key={entry.id}>
            <Row entry={entry} />
          </li>
        ))}
      </ul>
    </section>
  ));
}

function Row({ entry: { id, name, detail, tone } }: { readonly entry: Entry }) {
  const selected = useAppStore((state) => state.selection.includes(id));
  return (
    <button
      type="button"
      className="item"
      data-verdict={tone}
      aria-pressed={selected}
      onKeyDown={(event) => {
        if (event.key !== 'ContextMenu' && !(event.key === 'F10' && event.shiftKey)) return;
        event.preventDefault();
        openMenuOfRow(id, event.currentTarget);
      }}
      onContextMenu={(event) => {
        event.preventDefault();
        openMenuOfRow(id, event.currentTarget);
      }}
      onClick={(event) =>
        useAppStore.getState().select([id], event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'replace')
      }
    >
      <span>{name}</span>{' '}
      <span className="item__detail">
        {tone && <VerdictMark verdict={tone} size={16} />} {detail}
      </span>
    </button>
  );
}

function groupsOf(
  model: LevelModel,
  reports: readonly DetectorReport[],
  unit: LengthUnit,
  by: TapedBy,
): readonly Group[] {
  const { level } = model;
  const groups: readonly Group[] = [
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
      entries: level.walls.map((wall, index) => ({
        id: wall.id,
        name: `Wall ${index + 1}`,
        detail: `${formatMeasured(wallLengths(model, wall)[by], unit)} ${TAPED_BY_WORDS[by]}`,
      })),
    },
    {
      name: 'Openings',
      entries: level.openings.map(({ id, kind, width }) => ({
        id,
        name: capital(OPENING_NOUN[kind]),
        detail: `${formatLength(width, unit)} wide`,
      })),
    },
    {
      name: 'Air, heat, water',
      entries: level.fixtures.map(({ id, kind, name }) => ({
        id,
        name: name.trim() || capital(FIXTURE_NOUN[kind]),
        detail: name.trim() ? FIXTURE_NOUN[kind] : '',
      })),
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
  return groups.filter(({ entries }) => entries.length > 0);
}
