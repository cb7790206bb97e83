import { type KeyboardEvent, useState } from 'react';
import { openMenuOfRow } from '../../editor/open-menu.ts';
import { selectLevel, selectModel } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { usePlan } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { type Entry, itemGroups, levelGroup } from './level-entries.ts';

/**
 * The rows of the list of the level. Rendered only while the list is open: a level may hold hundreds of items. Tab stops at one row; arrows
 * move from row to row, Home and End to the ends.
 */
export function ItemGroups() {
  const plan = usePlan();
  const model = useThrottled(selectModel);
  const by = useAppStore(({ wallSettings }) => wallSettings.by);
  const reports = useThrottled(shownReports);
  const all = [levelGroup(plan), ...itemGroups(model, reports, plan.display.length, by)];
  const groups = all.filter(({ entries }) => entries.length > 0);
  const ids = groups.flatMap(({ entries }) => entries.map(({ id }) => id));
  const [focused, setFocused] = useState('');
  const stop = ids.includes(focused) ? focused : ids[0];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the rows in it
    <div onKeyDown={goByArrows} onFocus={({ target }) => setFocused(target.dataset.id ?? '')}>
      {groups.map(({ name, entries }) => (
        <section key={name} className="items" aria-label={name}>
          <h3>
            {name} <span className="soft">{entries.length}</span>
          </h3>
          <ul>
            {entries.map((entry) => {
              const isStop = entry.id === stop;
              return (
                <li key={entry.id}>
                  {entry.isLevel ? <LevelRow entry={entry} stop={isStop} /> : <Row entry={entry} stop={isStop} />}
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </div>
  );
}

const ARROW_STEPS: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowDown: (index, count) => Math.min(index + 1, count - 1),
  ArrowUp: (index) => Math.max(index - 1, 0),
  Home: () => 0,
  End: (_, count) => count - 1,
};

function goByArrows(event: KeyboardEvent<HTMLElement>): void {
  const rows = [...event.currentTarget.querySelectorAll<HTMLElement>('.item')];
  const next = ARROW_STEPS[event.key]?.(rows.indexOf(event.target as HTMLElement), rows.length);
  if (next === undefined) return;
  event.preventDefault();
  rows[next]?.focus();
}

interface RowProps {
  readonly entry: Entry;
  /** Whether Tab stops at this row. */
  readonly stop: boolean;
}

function LevelRow({ entry: { id, name, detail }, stop }: RowProps) {
  const shown = useAppStore((state) => selectLevel(state).id === id);
  return (
    <button
      type="button"
      className="item"
      data-id={id}
      tabIndex={stop ? 0 : -1}
      aria-pressed={shown}
      onClick={() => useAppStore.getState().setLevel(id)}
    >
      <span>{name}</span> <span className="item__detail">{detail}</span>
    </button>
  );
}

function Row({ entry: { id, name, detail, tone }, stop }: RowProps) {
  const selected = useAppStore((state) => state.selection.includes(id));
  return (
    <button
      type="button"
      className="item"
      data-id={id}
      tabIndex={stop ? 0 : -1}
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
