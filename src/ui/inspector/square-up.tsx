import { useEffect, useMemo, useState } from 'react';
import {
  QUAD_LINES,
  type Quad,
  type QuadLengths,
  type QuadLine,
  quadLengths,
} from '../../../geometry/edit/quad-adjust.ts';
import { fourCorners, squaredRoom } from '../../../geometry/edit/square-room.ts';
import type { Room } from '../../../geometry/level/types.ts';
import type { Mm } from '../../../geometry/plan/model.ts';
import { fieldLength } from '../../../geometry/units/format.ts';
import { parseLength } from '../../../geometry/units/index.ts';
import { editLevel } from '../../state/edit-walls.ts';
import { useShown } from '../../state/shown.ts';
import { useAppStore } from '../../state/store.ts';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { TypedField } from '../fields/typed-field.tsx';
import { useLevel } from '../hooks/use-level.ts';

/** Fields that correct the corners of a room of four walls by its two taped diagonals. */
export function SquareUp({ room }: { readonly room: Room }) {
  const [open, setOpen] = useState(false);
  const found = useMemo(() => fourCorners(room), [room]);
  return (
    <details className="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Square it up by its diagonals</summary>
      {open && (found.ok ? <Diagonals room={room} quad={found.quad} /> : <p>{found.reason}</p>)}
    </details>
  );
}

function Diagonals({ room, quad }: { readonly room: Room; readonly quad: Quad }) {
  const levelId = useLevel().id;
  const [taped, setTaped] = useState<Partial<QuadLengths>>({});
  const [trouble, setTrouble] = useState('');
  const drawn = quadLengths(quad);
  useEffect(() => {
    const [a, b, c, d] = quad;
    useShown.setState({
      corners: {
        levelId,
        lines: [
          [a, c],
          [b, d],
        ],
        letters: 'ABCD',
      },
    });
    return () => useShown.setState({ corners: null });
  }, [levelId, quad]);
  const take = (line: QuadLine) => (mm: Mm) => {
    setTaped((before) => ({ ...before, [line]: mm }));
    setTrouble('');
    return undefined;
  };
  const square = () => {
    if (taped['A-C'] === undefined || taped['B-D'] === undefined) {
      setTrouble('Type both diagonals first, as taped from corner to corner.');
      return;
    }
    let says = '';
    const refusal = editLevel((model, unit) => {
      const now = model.rooms.find(({ key }) => key === room.key);
      if (!now) return { ok: false, reason: 'The room is not closed any more. Close it first.' };
      const result = squaredRoom(model, now, { ...drawn, ...taped }, unit);
      if (result.ok) says = result.says;
      return result;
    });
    setTrouble(refusal);
    if (refusal) return;
    setTaped({});
    useAppStore.getState().say(says);
  };
  return (
    <div className="more__body">
      <FieldGroup name="Diagonals, as taped">
        {(['A-C', 'B-D'] as const).map((line) => (
          <EmptyLength key={line} label={line} value={taped[line] ?? null} drawn={drawn[line]} onCommit={take(line)} />
        ))}
      </FieldGroup>
      <FieldGroup name="Sides, as taped wall to wall">
        {QUAD_LINES.slice(0, 4).map((line) => (
          <LengthField key={line} label={line} value={taped[line] ?? drawn[line]} onCommit={take(line)} />
        ))}
      </FieldGroup>
      <p className="small soft">Corner A stays and wall A-B keeps its direction.</p>
      {trouble && (
        <p className="field__trouble" role="alert">
          {trouble}
        </p>
      )}
      <div className="buttons">
        <button type="button" className="button" onClick={square}>
          Square the room up
        </button>
      </div>
    </div>
  );
}

/** A field for a length that is not taped yet: the drawn length is shown, but never entered. */
function EmptyLength({
  label,
  value,
  drawn,
  onCommit,
}: {
  readonly label: string;
  readonly value: Mm | null;
  readonly drawn: Mm;
  readonly onCommit: (mm: Mm) => undefined;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  return (
    <TypedField
      label={label}
      shown={value === null ? '' : fieldLength(value, unit)}
      hint={`drawn: ${fieldLength(drawn, unit)}`}
      read={(text) => {
        const length = parseLength(text, unit);
        return length.ok ? { ok: true, value: length.mm, echo: length.echo } : length;
      }}
      onCommit={onCommit}
    />
  );
}
