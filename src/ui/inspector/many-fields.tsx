import { useState } from 'react';
import type { ItemList, ListedItem } from '../../../geometry/edit/listed-items.ts';
import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Mm } from '../../../geometry/plan/model.ts';
import { useAppStore } from '../../state/store.ts';
import { LengthField } from '../fields/length-field.tsx';

const NOUNS: Readonly<Record<ItemList, string>> = {
  walls: 'wall',
  openings: 'opening',
  rooms: 'room name',
  fixtures: 'fixture',
  objects: 'object',
  detectors: 'detector',
};

/** The fields of several selected items: their kinds, and a move by numbers. */
export function ManyFields({ found }: { readonly found: readonly ListedItem[] }) {
  const nudge = useAppStore((state) => state.nudge);
  const [right, setRight] = useState<Mm>(0);
  const [down, setDown] = useState<Mm>(0);
  const kinds = (Object.entries(NOUNS) as [ItemList, string][])
    .map(([list, noun]) => ({ noun, count: found.filter((each) => each.list === list).length }))
    .filter(({ count }) => count > 0);
  const keep = (take: (mm: Mm) => void) => (mm: Mm) => {
    take(mm);
    return undefined;
  };
  return (
    <>
      <p>{listed(kinds.map(({ noun, count }) => counted(count, noun)))}.</p>
      <div className="fields">
        <LengthField
          label="Move right by"
          value={right}
          negative
          onCommit={keep(setRight)}
          hint="With a minus: left."
        />
        <LengthField label="Move down by" value={down} negative onCommit={keep(setDown)} hint="With a minus: up." />
      </div>
      <button type="button" className="button" disabled={right === 0 && down === 0} onClick={() => nudge(right, down)}>
        Move them
      </button>
    </>
  );
}
