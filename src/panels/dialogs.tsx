import { type ReactNode, useEffect, useRef, useState } from 'react';
import { counted } from '../../geometry/words.ts';
import { readShelf, type ShelvedPlan } from '../io/cabinet.ts';
import { downloadFile, type FileProblem } from '../io/plan-files.ts';
import { SAMPLES } from '../io/samples.ts';
import { openEarlier, openSample } from './file-acts.ts';
import { KeyTable } from './key-table.tsx';
import { SheetPreview } from './sheet-preview.tsx';
import { showDialog, useUi } from './ui.ts';
import './dialogs.css';

/** Whatever stands over the page until it is answered. Escape closes it. */
export function Dialogs() {
  const dialog = useUi((ui) => ui.dialog);
  switch (dialog?.kind) {
    case 'refused':
      return <Refused name={dialog.name} problems={dialog.problems} />;
    case 'samples':
      return <Samples />;
    case 'earlier':
      return <Earlier />;
    case 'keys':
      return (
        <Frame title="Keys" closeFirst>
          <KeyTable />
        </Frame>
      );
    case 'sheet':
      return (
        <Frame title="The sheet" closeFirst wide>
          <SheetPreview paper={dialog.paper} />
        </Frame>
      );
    default:
      return null;
  }
}

interface FrameProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Whether the way out has the keyboard first: for what is only read. */
  readonly closeFirst?: boolean;
  readonly wide?: boolean;
}

function Frame({ title, children, closeFirst = false, wide = false }: FrameProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const close = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    if (closeFirst) close.current?.focus();
  }, [closeFirst]);
  return (
    <dialog
      ref={dialog}
      className={wide ? 'dialog dialog--wide' : 'dialog'}
      aria-labelledby="dialog-title"
      onClose={() => showDialog(null)}
    >
      <h2 id="dialog-title">{title}</h2>
      {children}
      <form method="dialog">
        <button ref={close} type="submit" className="button">
          Close
        </button>
      </form>
    </dialog>
  );
}

function Refused({ name, problems }: { readonly name: string; readonly problems: readonly FileProblem[] }) {
  return (
    <Frame title={`${name} was not opened`} closeFirst>
      <p>
        {counted(problems.length, 'thing')} in it {problems.length === 1 ? 'is' : 'are'} not as a plan file has it. What
        you had open is still open, unchanged.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="problems" aria-label="What is wrong" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Where in the file</th>
              <th scope="col">Found</th>
              <th scope="col">Expected</th>
            </tr>
          </thead>
          <tbody>
            {problems.map(({ place, found, expected }) => (
              <tr key={`${place} ${found} ${expected}`}>
                <td className="figures">{place}</td>
                <td>{found}</td>
                <td>{expected}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </Frame>
  );
}

function Samples() {
  return (
    <Frame title="Samples">
      <p>Invented houses to try things on. What you have open is put aside under Earlier.</p>
      <ul className="rows">
        {SAMPLES.map((sample) => (
          <li key={sample.file}>
            <button type="button" className="row" onClick={() => void openSample(sample)}>
              <strong>{sample.title}</strong>
              <span>{sample.shows}</span>
            </button>
          </li>
        ))}
      </ul>
    </Frame>
  );
}

function Earlier() {
  const [shelf, setShelf] = useState<readonly ShelvedPlan[]>([]);
  useEffect(() => {
    void readShelf().then(setShelf);
  }, []);
  return (
    <Frame title="Earlier plans">
      <p>Plans that another one took the place of, kept in this browser. The oldest makes way after twelve.</p>
      <ul className="rows">
        {shelf.map((plan) => (
          <li key={plan.putAwayAt}>
            <button type="button" className="row" onClick={() => take(plan)}>
              <strong>{plan.title.trim() || 'No title'}</strong>
              <span>
                {new Date(plan.putAwayAt).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}
                {plan.readable ? '' : ', save its text as a file'}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </Frame>
  );
}

function take(plan: ShelvedPlan): void {
  if (plan.readable) void openEarlier(plan.text, plan.title);
  else downloadFile('could-not-be-read.json', new Blob([plan.text], { type: 'application/json' }));
}
