import type { RefObject } from 'react';
import type { LengthUnit } from '../../../../geometry/units/index.ts';
import { useAppStore } from '../../../state/store.ts';
import { typeInto } from '../../tape/length-input.ts';

/** Keys that the number pad of a phone does not have, in rows: units, then fractions. */
const PAD: Readonly<Record<LengthUnit, readonly (readonly string[])[]>> = {
  'feet-inches': [
    ['ft', 'in'],
    ['1/8', '1/4', '1/2', '3/4'],
  ],
  metric: [['m', 'cm', 'mm']],
};

/** The lower part of a box that asks for a length: the status, units and fractions for a finger, and buttons for Enter and Escape. */
export function BoxActions({
  statusId,
  status,
  field,
  onSet,
  onCancel,
  onNext,
}: {
  readonly statusId: string;
  readonly status: string;
  readonly field: RefObject<HTMLInputElement | null>;
  readonly onSet: () => void;
  readonly onCancel: () => void;
  /** Sets the length and opens the next of those that are taped together. */
  readonly onNext?: () => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const add = (part: string) => {
    const input = field.current;
    if (!input) return;
    typeInto(input, `${input.value.trimEnd()} ${part} `.trimStart());
    input.focus({ preventScroll: true });
  };
  return (
    <>
      <p id={statusId} role="status">
        {status}
      </p>
      {/* A press on a button does not take the focus from the field. */}
      <div className="box-actions" onPointerDown={(event) => event.preventDefault()}>
        <div className="box-actions__pad">
          {PAD[unit].map((row, index) => (
            <div key={row[0]} className="box-actions__row">
              {[...row, ...(onNext && index === 0 ? ['×'] : [])].map((part) => (
                <button key={part} type="button" className="button" onClick={() => add(part)}>
                  {part}
                </button>
              ))}
            </div>
          ))}
        </div>
        <button type="button" className="button" onClick={onSet}>
          Set
        </button>
        {onNext && (
          <button type="button" className="button box-actions__next" onClick={onNext}>
            Set, next
          </button>
        )}
        <button type="button" className="button button--bare" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </>
  );
}
