import { useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { useLevel } from '../hooks/use-level.ts';
import { ItemGroups } from './item-groups.tsx';
import './item-list.css';

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
      {open && <ItemGroups />}
    </details>
  );
}
