import { asForm, footprintSize } from '../../../geometry/dimension/footprint.ts';
import { heightsRefusal } from '../../../geometry/messages/index.ts';
import type { Mm, Shape } from '../../../geometry/plan/model.ts';
import { fullTurn } from '../../../geometry/plane/bearing.ts';
import { itemFieldId } from '../../commands/go-to.ts';
import { resizeThing, turnThing } from '../../state/shape-edits.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { useLevel } from '../hooks/use-level.ts';

interface ShapeProps {
  readonly id: string;
  readonly shape: Shape;
}

/** Fields for form, size and rotation of a shape. A polygon is not changed here. */
export function ShapeFields({ id, shape }: ShapeProps) {
  const updateItem = useAppStore((state) => state.updateItem);
  const { across, width, depth, turn } = footprintSize(shape);
  const resize = (part: 'across' | 'width' | 'depth') => (mm: Mm) => resizeThing({ id, shape }, part, mm);
  if ('polygon' in shape) {
    return <p className="wide small soft">Its outline has corners of its own: drag them on the plan.</p>;
  }
  return (
    <>
      <div className="wide">
        <ChoiceField
          label="Form"
          value={'circle' in shape ? 'round' : 'square'}
          choices={[
            { value: 'round', words: 'round' },
            { value: 'square', words: 'square-cornered' },
          ]}
          onCommit={(form) => updateItem(id, { shape: asForm(shape, form) })}
        />
      </div>
      {across !== null && <LengthField label="Across" value={across} bare="small" onCommit={resize('across')} />}
      {width !== null && <LengthField label="Width" value={width} bare="small" onCommit={resize('width')} />}
      {depth !== null && <LengthField label="Depth" value={depth} bare="small" onCommit={resize('depth')} />}
      {turn !== null && (
        <NumberField
          label="Turned clockwise"
          value={turn}
          unit="°"
          least={-360}
          most={360}
          onCommit={(degrees) => turnThing({ id, shape }, fullTurn(degrees ?? 0))}
        />
      )}
    </>
  );
}

interface HeightProps {
  readonly id: string;
  readonly bottom: Mm;
  readonly top: Mm;
}

/** Fields for the lower and the upper height above the floor. */
export function HeightFields({ id, bottom, top }: HeightProps) {
  const updateItem = useAppStore((state) => state.updateItem);
  const unit = useAppStore((state) => state.plan.display.length);
  const { ceiling } = useLevel();
  // Stores only the entered height: the other one may still be assumed.
  const change = (patch: { bottom?: Mm; top?: Mm }) => {
    const next = { bottom, top, ...patch };
    return heightsRefusal(next.bottom, next.top, ceiling, unit) || updateItem(id, patch);
  };
  return (
    <FieldGroup name="Above the floor">
      <LengthField label="Underside" value={bottom} bare="small" negative onCommit={(mm) => change({ bottom: mm })} />
      <LengthField
        id={itemFieldId('top')}
        label="Top"
        value={top}
        bare="small"
        negative
        onCommit={(mm) => change({ top: mm })}
      />
    </FieldGroup>
  );
}
