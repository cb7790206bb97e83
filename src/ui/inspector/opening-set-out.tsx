import { useState } from 'react';
import { tapedOffsets } from '../../../geometry/dimension/opening-offsets.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Mm, Opening, Wall } from '../../../geometry/plan/model.ts';
import { selectModel } from '../../state/selectors.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useThrottled } from '../hooks/use-throttled.ts';

interface Props {
  readonly opening: Opening;
  readonly wall: Wall;
  /** Takes over how far the opening lies from its wall's beginning. Returns why not, or empty. */
  readonly onOffset: (offset: Mm) => string;
}

/** Distances of the opening from the corners on its left and right, along the wall's face as it is taped; typing either one slides it. */
export function SetOut({ opening, wall, onOffset }: Props) {
  const model = useThrottled(selectModel);
  const [key, setKey] = useState('');
  const sides = tapedOffsets(model, wall, opening);
  const taped = sides.find(({ room }) => room.key === key) ?? sides[0];
  if (!taped) return <FromEnds opening={opening} wall={wall} onOffset={onOffset} />;
  const { left, right, way } = taped;
  const slide = (by: Mm) => onOffset(opening.offset + way * by);
  return (
    <FieldGroup name="From the corners, as taped to its jambs">
      {sides.length > 1 && (
        <div className="wide">
          <ChoiceField
            label="Standing in"
            value={taped.room.key}
            choices={sides.map(({ room }) => ({
              value: room.key,
              words: room.label?.name.trim() || 'the room without a name',
            }))}
            onCommit={setKey}
          />
        </div>
      )}
      <LengthField label="Left corner" value={left} onCommit={(mm) => slide(mm - left)} />
      <LengthField label="Right corner" value={right} onCommit={(mm) => slide(right - mm)} />
    </FieldGroup>
  );
}

/** Without a room beside the wall there are no corners to tape from. */
function FromEnds({ opening, wall, onOffset }: Props) {
  const whole = wallLength(wall);
  return (
    <FieldGroup name="From its jambs to the ends of the wall">
      <LengthField label="One end" value={opening.offset} onCommit={onOffset} />
      <LengthField
        label="The other end"
        value={whole - opening.offset - opening.width}
        onCommit={(rest) => onOffset(whole - opening.width - rest)}
      />
    </FieldGroup>
  );
}
