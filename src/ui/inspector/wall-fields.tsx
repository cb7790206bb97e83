import { useState } from 'react';
import type { MovingEnd } from '../../../geometry/edit/stretch.ts';
import { correctedWall, shiftedWall } from '../../../geometry/edit/wall-edit.ts';
import { thicknessRefusal, wallEndNames } from '../../../geometry/messages/index.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Mm, Wall, WallSide } from '../../../geometry/plan/model.ts';
import { wallFaceLength } from '../../../geometry/snap/wall-face.ts';
import { editLevel } from '../../state/edit-walls.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useThrottled } from '../hooks/use-throttled.ts';
import { WallParts } from './wall-parts.tsx';

const SIDES: readonly { readonly value: WallSide; readonly words: string }[] = [
  { value: 'auto', words: 'as drawn' },
  { value: 'outside', words: 'outside wall' },
  { value: 'inside', words: 'inside wall' },
];

export function WallFields({ wall }: { readonly wall: Wall }) {
  const unit = useAppStore((state) => state.plan.display.length);
  const { updateItem } = useAppStore.getState();
  const ends = wallEndNames(wall);
  return (
    <>
      <div className="fields">
        <WallLength wall={wall} />
        <LengthField
          label={ends.to === 'left' || ends.to === 'right' ? 'Move it down by' : 'Move it right by'}
          value={0}
          negative
          hint={ends.to === 'left' || ends.to === 'right' ? 'With a minus: up.' : 'With a minus: left.'}
          onCommit={(mm) => editLevel((now, inUnit) => shiftedWall(now, wall.id, mm, inUnit))}
        />
        <LengthField
          label="Thickness"
          value={wall.thickness}
          bare="small"
          onCommit={(mm) => {
            const refusal = thicknessRefusal(mm, unit);
            if (refusal) return refusal;
            return updateItem(wall.id, { thickness: mm });
          }}
        />
        <div className="wide">
          <ChoiceField
            label="Outside or inside"
            value={wall.side}
            choices={SIDES}
            hint="As drawn: outside where nothing closed lies behind it. Say inside where the neighbor's house adjoins."
            onCommit={(side) => updateItem(wall.id, { side })}
          />
        </div>
      </div>
      <WallParts wall={wall} />
    </>
  );
}

/** The length of the wall, along its face and between the middles of its ends, and which end moves when it is corrected. */
function WallLength({ wall }: { readonly wall: Wall }) {
  const model = useThrottled(selectModel);
  const [moves, setMoves] = useState<MovingEnd>('to');
  const whole = wallLength(wall);
  const face = wallFaceLength(model, wall);
  const ends = wallEndNames(wall);
  const lengthen = (mm: Mm) => editLevel((now, inUnit) => correctedWall(now, wall.id, mm, moves, inUnit));
  return (
    <FieldGroup name="Length">
      {face !== null && (
        <LengthField label="Along its face, as taped" value={face} onCommit={(mm) => lengthen(whole + mm - face)} />
      )}
      <LengthField label="Middle to middle" value={whole} onCommit={lengthen} />
      <div className="wide">
        <ChoiceField
          label="The end that moves"
          value={moves}
          choices={[
            { value: 'from', words: `${ends.from} end` },
            { value: 'to', words: `${ends.to} end` },
            { value: 'both', words: 'both ends, by half' },
          ]}
          hint="Walls that are joined there go along, and so does what stands against them."
          onCommit={setMoves}
        />
      </div>
    </FieldGroup>
  );
}
