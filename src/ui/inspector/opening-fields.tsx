import { capital, openingRefusal } from '../../../geometry/messages/index.ts';
import type { Opening } from '../../../geometry/plan/model.ts';
import { OPENING_KINDS } from '../../../geometry/plan/model.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useLevel } from '../hooks/use-level.ts';
import { HeightsAssumed } from './heights-assumed.tsx';
import { SetOut } from './opening-set-out.tsx';
import { SunFields } from './sun-fields.tsx';

const KINDS = OPENING_KINDS.map((value) => ({ value, words: capital(value) }));

export function OpeningFields({ opening }: { readonly opening: Opening }) {
  const level = useLevel();
  const unit = useAppStore((state) => state.plan.display.length);
  const updateItem = useAppStore((state) => state.updateItem);
  const wall = level.walls.find(({ id }) => id === opening.wall);
  const change = (patch: Partial<Opening>) => {
    const refusal = openingRefusal(level, { ...opening, ...patch }, unit);
    if (refusal) return refusal;
    return updateItem(opening.id, patch);
  };
  return (
    <div className="fields">
      <div className="wide">
        <ChoiceField
          label="What it is"
          value={opening.kind}
          choices={KINDS}
          onCommit={(kind) => updateItem(opening.id, { kind })}
        />
      </div>
      <LengthField label="Width" value={opening.width} bare="small" onCommit={(width) => change({ width })} />
      {wall && <SetOut opening={opening} wall={wall} onOffset={(offset) => change({ offset })} />}
      <FieldGroup name="Above the floor">
        <LengthField
          label="Sill"
          value={opening.bottom}
          bare="small"
          negative
          onCommit={(bottom) => change({ bottom })}
        />
        <LengthField label="Head" value={opening.top} bare="small" onCommit={(top) => change({ top })} />
      </FieldGroup>
      <HeightsAssumed item={opening} names={['Sill', 'Head']} />
      <SunFields opening={opening} />
    </div>
  );
}
