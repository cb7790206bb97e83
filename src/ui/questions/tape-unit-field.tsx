import { useTape } from '../../editor/tape/tape-store.ts';
import { TAPE_UNITS } from '../../editor/tape/tape-text.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { keepTapeUnit } from './keep-tape-unit.ts';

const NOT_SAID = 'ask';
const CHOICES = [
  { value: NOT_SAID, words: 'Ask at the first one' },
  ...TAPE_UNITS.map((unit) => ({ value: unit, words: unit })),
] as const;

/** A field for the unit of the numbers that a laser tape types without a unit. */
export function TapeUnitField() {
  const unit = useTape((tape) => tape.unit);
  return (
    <ChoiceField
      label="Laser tape that types: unit of its numbers"
      value={unit ?? NOT_SAID}
      choices={CHOICES}
      onCommit={(chosen) => keepTapeUnit(chosen === NOT_SAID ? null : chosen)}
    />
  );
}
