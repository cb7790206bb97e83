import { dropReading, useTape } from '../../editor/tape/tape-store.ts';
import { readTapeText, TAPE_UNITS, type TapeText, type TapeUnit } from '../../editor/tape/tape-text.ts';
import { useAppStore } from '../../state/store.ts';
import { keepTapeUnit } from './keep-tape-unit.ts';

/** The reading of a laser tape that no length was asked for, and how to use it; or the question for its unit. */
export function TapeLine({ reading }: { readonly reading: TapeText }) {
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
        Discard it
      </button>
    </div>
  );
}

function wordsFor(reading: TapeText): string {
  switch (reading.kind) {
    case 'length':
      return `The laser tape read ${asRead(reading)}. Press a length on the plan to give it this.`;
    case 'bare': {
      const taken = reading.isTaken ? ', and the field took it in its own unit' : '';
      return `The laser tape typed ${reading.text}${taken}. In which unit does it type?`;
    }
    case 'unread':
      return `The laser tape typed something else. ${reading.message}`;
  }
}

/** Stores the unit, and offers the reading for the next pressed length. */
function takeUnit(text: string, unit: TapeUnit): void {
  keepTapeUnit(unit);
  useTape.setState({ reading: readTapeText(text, unit, useAppStore.getState().plan.display.length) });
}

function asRead({ text, echo }: Extract<TapeText, { kind: 'length' }>): string {
  return text === echo ? text : `${text}, ${echo}`;
}
