import { useState } from 'react';
import { levelBelow, levelsInOrder } from '../../../../../geometry/edit/index.ts';
import { levelHeading, levelName } from '../../../../../geometry/plan/nouns.ts';
import { copyLevelOutline } from '../../../../commands/late-edits.ts';
import { useAppStore } from '../../../../state/store.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';
import { FieldGroup } from '../../../fields/field-group.tsx';
import { useLevel } from '../../../hooks/use-level.ts';

/** Copies the outline of another level to this one. Renders nothing if no other level has walls. */
export function CopyOutline() {
  const plan = useAppStore((state) => state.plan);
  const level = useLevel();
  const [asked, setAsked] = useState('');
  const [openings, setOpenings] = useState(false);
  const [insideWalls, setInsideWalls] = useState(false);
  const others = levelsInOrder(plan).filter(({ id, walls }) => id !== level.id && walls.length > 0);
  const usual = others.find(({ id }) => id === levelBelow(plan, level.id)?.id) ?? others[0];
  const source = others.find(({ id }) => id === asked) ?? usual;
  if (!source) return null;
  return (
    <FieldGroup name="Copy the outline">
      <div className="levels">
        <ChoiceField
          label="From"
          value={source.id}
          choices={others.map((other) => ({ value: other.id, words: levelHeading(other) }))}
          onCommit={setAsked}
        />
        <Tick words="With its doors and windows" on={openings} onTurn={setOpenings} />
        <Tick words="With its interior walls" on={insideWalls} onTurn={setInsideWalls} />
        <button type="button" className="button" onClick={() => copyLevelOutline(source.id, { openings, insideWalls })}>
          Copy to {levelName(level)}
        </button>
      </div>
    </FieldGroup>
  );
}

function Tick({ words, on, onTurn }: { words: string; on: boolean; onTurn: (on: boolean) => void }) {
  return (
    <label className="tick">
      <input type="checkbox" checked={on} onChange={(event) => onTurn(event.currentTarget.checked)} />
      {words}
    </label>
  );
}
