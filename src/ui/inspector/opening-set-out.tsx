import { useEffect, useState } from 'react';
import { tapedOffsets } from '../../../geometry/dimension/opening-offsets.ts';
import { capital, cornerWords } from '../../../geometry/messages/index.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Mm, Opening, Wall } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { selectModel } from '../../state/selectors.ts';
import { useShown } from '../../state/shown.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useLevel } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';

interface Props {
  readonly opening: Opening;
  readonly wall: Wall;
  /** Stores the distance of the opening from the start of its wall, mm. Returns why it was refused, in words; empty if it was stored. */
  readonly onOffset: (offset: Mm) => string;
}

/** Distances of the opening from the corners on its left and right, along the taped face of the wall; typing either one moves it. */
export function SetOut({ opening, wall, onOffset }: Props) {
  const model = useThrottled(selectModel);
  const [key, setKey] = useState('');
  const sides = tapedOffsets(model, wall, opening);
  const taped = sides.find(({ room }) => room.key === key) ?? sides[0];
  if (!taped) return <FromEnds opening={opening} wall={wall} onOffset={onOffset} />;
  const { left, right, lines, way } = taped;
  const slide = (by: Mm) => onOffset(opening.offset + way * by);
  const words = cornerWords([lines.left[0], lines.right[0]], sides.length === 1 ? taped.facing : null);
  const fields = [
    { words: words.from, value: left, line: lines.left, onCommit: (mm: Mm) => slide(mm - left) },
    { words: words.to, value: right, line: lines.right, onCommit: (mm: Mm) => slide(right - mm) },
  ];
  // The left or the upper corner first.
  if (words.from.name === 'right' || words.from.name === 'lower') fields.reverse();
  return (
    <FieldGroup
      name={sides.length === 1 ? 'From the corners to its jambs, as seen from inside' : 'From the corners to its jambs'}
    >
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
      {fields.map(({ words, ...field }) => (
        <CornerField key={words.name} label={`${capital(words.name)} corner, ${words.seen}`} {...field} />
      ))}
    </FieldGroup>
  );
}

interface CornerProps {
  readonly label: string;
  readonly value: Mm;
  /** The line from the corner to the jamb. */
  readonly line: Line;
  readonly onCommit: (mm: Mm) => string;
}

/** A distance from a corner. While the field has the focus, the plan marks the corner and the length to the jamb. */
function CornerField({ line, ...field }: CornerProps) {
  const levelId = useLevel().id;
  const [isIn, setIsIn] = useState(false);
  useEffect(() => {
    if (!isIn) return undefined;
    useShown.setState({ corners: { levelId, lines: [line], letters: field.label.charAt(0) } });
    return () => useShown.setState({ corners: null });
  }, [isIn, levelId, line, field.label]);
  return <LengthField {...field} onFocus={setIsIn} />;
}

/** Distances from the ends of the wall: without a room beside the wall there are no corners to tape from. */
function FromEnds({ opening, wall, onOffset }: Props) {
  const whole = wallLength(wall);
  const { from, to } = cornerWords([wall.from, wall.to], null);
  const label = ({ name, seen }: typeof from) => `${capital(name)} end, ${seen}`;
  return (
    <FieldGroup name="From its jambs to the ends of the wall">
      <LengthField label={label(from)} value={opening.offset} onCommit={onOffset} />
      <LengthField
        label={label(to)}
        value={whole - opening.offset - opening.width}
        onCommit={(rest) => onOffset(whole - opening.width - rest)}
      />
    </FieldGroup>
  );
}
