import { useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { useLevel } from '../hooks/use-level.ts';
import { ItemGroups } from './item-groups.tsx';
import './item-list.css';

/**
 * The list of all items of the level, which replaces the sheet for keyboards and screen readers. Shows the selection and the verdicts, in
 * every stage beside the plan.
 */
export function LevelItems() {
  const { detectors, rooms, walls, openings, fixtures, objects } = useLevel();
  const [open, setOpen] = useState(false);
  const count = [detectors, rooms, walls, openings, fixtures, objects].reduce((sum, { length }) => sum + length, 0);
  return (
    <details className="group all-items" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Everything on this level <span className="soft">{counted(count, 'thing')}</span>
      </summary>
      {open && <ItemGroups />}
    </details>
  );
}
