import { useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { useLevel } from '../hooks/use-level.ts';
import { ItemGroups } from './item-groups.tsx';
import './item-list.css';

/**
 * Every item of the level as a list: the sheet for a keyboard and a screen reader. It shows the selection and the verdicts, and is
 * there in every stage.
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
