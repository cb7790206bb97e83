import { useState } from 'react';
import type { DetectorReport, Verdict } from '../../geometry/check/types.ts';
import type { Level } from '../../geometry/plan/model.ts';
import { wallLength } from '../../geometry/plan/stretch.ts';
import { formatLength, formatMeasured, type LengthUnit } from '../../geometry/units.ts';
import { capital, counted, FIXTURE_NOUN, OPENING_NOUN, ROOM_USE_NOUN, VERDICT_WORD } from '../../geometry/words.ts';
import { openMenuOfRow } from '../canvas/open-menu.ts';
import { selectReports } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { useCalm } from './calm.ts';
import { useLevel } from './use-level.ts';
import { VerdictMark } from './verdict-mark.tsx';
import './item-list.css';

interface Entry {
  readonly id: string;
  readonly name: string;
  readonly detail: string;
  /** Of a detector. */
  readonly verdict?: Verdict;
}
interface Group {
  readonly name: string;
  readonly entries: readonly Entry[];
}

/**
 * Everything on the level as words: the sheet for a keyboard and a screen reader. It mirrors the selection and the verdicts, and stands
 * beside the sheet whichever stage is open.
 */
export function ItemList() {
  const { detectors, rooms, walls, openings, fixtures, objects } = useLevel();
  const [open, setOpen] = useState(false);
  const count = [detectors, rooms, walls, openings, fixtures, objects].reduce((sum, { length }) => sum + length, 0);
  return (
    <details className="group all-items" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Everything on this level <span className="soft">{counted(count, 'thing')}</span>
      </summary>
      {open && <Groups />}
    </details>
  );
}

/** Made only while the list is open: a level may hold hundreds of things. */
function Groups() {
  const level = useLevel();
  const reports = useCalm(selectReports);
  const unit = useAppStore((state) => state.plan.display.length);
  return groupsOf(level, reports, unit).map(({ name, entries }) => (
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

function Row({ entry: { id, name, detail, verdict } }: { readonly entry: Entry }) {
  const selected = useAppStore((state) => state.selection.includes(id));
  return (
    <button
      type="button"
      className="item"
      data-verdict={verdict}
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
        {verdict && <VerdictMark verdict={verdict} size={16} />} {detail}
      </span>
    </button>
  );
}

function groupsOf(level: Level, reports: readonly DetectorReport[], unit: LengthUnit): readonly Group[] {
  const groups: readonly Group[] = [
    {
      name: 'Detectors',
      entries: level.detectors.map(({ id, label }) => {
        const verdict = reports.find((report) => report.id === id)?.verdict ?? 'unknown';
        return { id, name: label.trim() || 'No label', detail: VERDICT_WORD[verdict], verdict };
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
        detail: formatMeasured(wallLength(wall), unit),
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
