import { saveWhole } from '../../commands/open-and-save.ts';
import { useFaults } from '../../platform/faults.ts';

/** Says that a part of Stillspot failed, and offers the plan as a file. Stays until the part works again or the user closes it. */
export function FaultLine() {
  const { drawAgain, other } = useFaults();
  if (!drawAgain && !other) return null;
  return (
    <div className="message" data-message="">
      <p role="alert">
        {drawAgain
          ? 'A fault of Stillspot: the plan on screen may be out of date. It is drawn again in a moment; the plan itself is kept.'
          : `A fault of Stillspot: something did not work. The plan is kept. Details: ${other}`}
      </p>
      <button
        type="button"
        className="text-button"
        onClick={() => (drawAgain ? drawAgain() : useFaults.setState({ other: '' }))}
      >
        {drawAgain ? 'Draw it again' : 'Close'}
      </button>
      <button type="button" className="text-button" onClick={() => void saveWhole()}>
        Save the plan as a file
      </button>
    </div>
  );
}
