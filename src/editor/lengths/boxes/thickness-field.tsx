import { useState } from 'react';
import { thicknessRefusal } from '../../../../geometry/messages/index.ts';
import { fieldLength } from '../../../../geometry/units/format.ts';
import { parseLength } from '../../../../geometry/units/index.ts';
import { selectModel } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { wallKindFrom } from '../../../state/wall-chain.ts';
import { withSaid } from '../../../state/wall-settings.ts';
import { BoxField } from './box-field.tsx';

/** The thickness of the walls that are being drawn. Enter sets it and returns to their length. */
export function ThicknessField({
  statusId,
  onDone,
  onRefusal,
}: {
  readonly statusId: string;
  readonly onDone: () => void;
  readonly onRefusal: (refusal: string) => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const settings = useAppStore((state) => state.wallSettings);
  const [start] = useAppStore(({ chain }) => chain.corners);
  const [text, setText] = useState<string | null>(null);
  const kind = start ? wallKindFrom(selectModel(useAppStore.getState()), start, settings) : 'outer';
  const isAssumed = !settings.said.includes(kind);
  const commit = (): boolean => {
    if (text === null) return true;
    const length = parseLength(text, unit, { bare: 'small' });
    const refusal = length.ok ? thicknessRefusal(length.mm, unit) : length.message;
    onRefusal(refusal);
    if (refusal || !length.ok) return false;
    useAppStore.getState().setWallSettings(withSaid(settings, { [kind]: length.mm }));
    setText(null);
    return true;
  };
  return (
    <>
      <BoxField
        label="Thickness"
        isSelected
        value={text ?? fieldLength(settings[kind], unit)}
        statusId={statusId}
        onType={setText}
        onLeave={() => void commit()}
        onKey={({ key }) => {
          if (key === 'Enter') {
            if (commit()) onDone();
          } else if (key === 'Escape') {
            setText(null);
            onDone();
          } else return false;
          return true;
        }}
      />
      {isAssumed && <p>{kind === 'outer' ? 'Exterior wall' : 'Partition'}: the thickness is assumed.</p>}
    </>
  );
}
