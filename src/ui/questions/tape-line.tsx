import { typeInto } from '../../editor/tape/length-input.ts';
import { dropReading, useTape } from '../../editor/tape/tape-store.ts';
import { readTapeText, TAPE_UNITS, type TapeText, type TapeUnit } from '../../editor/tape/tape-text.ts';
import { useAppStore } from '../../state/store.ts';
import { keepTapeUnit } from './keep-tape-unit.ts';

/** What a laser tape typed while nothing asked for a length, and where it can go; or the question for its unit. */
export function TapeLine() {
  const reading = useTape((tape) => tape.reading);
  if (!reading) return null;
  return (
    <div className="message" data-message="">
      <p role="status">{wordsFor(reading)}</p>
      {reading.kind === 'bare' && (
        <fieldset className="message__units">
          <legend className="unseen">Unit of the laser tape</legend>
          {TAPE_UNITS.map((unit) => (
            <button key={unit} type="button" className="button" onClick={() => takeUnit(reading.text, unit)}>
              {unit}
            </button>
          ))}
        </fieldset>
      )}
      <button type="button" className="text-button" onClick={dropReading}>
        Drop it
      </button>
    </div>
  );
}

function wordsFor(reading: TapeText): string {
  switch (reading.kind) {
    case 'length':
      return `The laser tape read ${reading.echo}. Press a length on the plan to give it this.`;
    case 'bare':
      return `The laser tape typed ${reading.text}. In which unit does it type?`;
    case 'unread':
      return `The laser tape typed something else. ${reading.message}`;
  }
}

/** Keeps the unit, and hands the length on: to the field that it was typed into, else to the next length that is pressed. */
function takeUnit(text: string, unit: TapeUnit): void {
  keepTapeUnit(unit);
  const { field } = useTape.getState();
  const reading = readTapeText(text, unit, useAppStore.getState().plan.display.length);
  if (!field?.isConnected || reading.kind !== 'length') {
    useTape.setState({ reading, field: null });
    return;
  }
  dropReading();
  typeInto(field, reading.text);
  field.focus();
}
