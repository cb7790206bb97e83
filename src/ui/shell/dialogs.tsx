import { type ReactNode, useEffect, useRef } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { saveWhole } from '../../commands/open-and-save.ts';
import { showDialog, usePanels } from '../../commands/panels.ts';
import { useAppStore } from '../../state/store.ts';
import type { FileProblem } from '../../storage/plan-files.ts';
import { later } from '../hooks/later.tsx';
import { useModal } from '../hooks/use-modal.ts';
import { DOCUMENT_NAMES } from '../print/paper-files.ts';
import { PictureQuestion } from './picture-question.tsx';
import './dialogs.css';

const KeyTable = later(() => import('./key-table.tsx').then((part) => part.KeyTable));
const PlansScreen = later(() => import('../library/plans-screen.tsx').then((part) => part.PlansScreen));
const SheetPreview = later(() => import('../print/page-previews.tsx').then((part) => part.SheetPreview));
const PaperPreview = later(() => import('../print/page-previews.tsx').then((part) => part.PaperPreview));
const QuickCardPages = later(() => import('../quick-card/quick-card-pages.tsx').then((part) => part.QuickCardPages));
const QualityDialog = later(() => import('../quality/quality-book.tsx').then((part) => part.QualityDialog));

/** The open dialog. Escape closes it. */
export function Dialogs() {
  const dialog = usePanels((ui) => ui.dialog);
  switch (dialog?.kind) {
    case 'refused':
      return <Refused name={dialog.name} problems={dialog.problems} after={dialog.after ?? null} />;
    case 'plans':
      return <PlansScreen />;
    case 'quick-card':
      return <QuickCardPages />;
    case 'quality':
      return <QualityDialog />;
    case 'leave':
      return <Leave why={dialog.why} go={dialog.go} />;
    case 'keys':
      return (
        <Frame title="Keys and terms" closeFirst>
          <KeyTable />
        </Frame>
      );
    case 'pictures':
      return (
        <Frame title="Save with the picture?">
          <PictureQuestion take={dialog.take} />
        </Frame>
      );
    case 'sheet':
      return (
        <Frame title="Plan sheet" closeFirst wide>
          <SheetPreview choice={dialog.choice} showTracing={dialog.showTracing} />
        </Frame>
      );
    case 'paper':
      return (
        <Frame title={DOCUMENT_NAMES[dialog.which]} closeFirst wide>
          <PaperPreview choice={dialog.choice} which={dialog.which} />
        </Frame>
      );
    default:
      return null;
  }
}

interface FrameProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Whether the close button gets the focus first, for dialogs without input. */
  readonly closeFirst?: boolean;
  readonly wide?: boolean;
  readonly onClose?: () => void;
}

function Frame({ title, children, closeFirst = false, wide = false, onClose = () => showDialog(null) }: FrameProps) {
  const { ref, shut, events } = useModal(onClose);
  const close = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (closeFirst) close.current?.focus();
  }, [closeFirst]);
  return (
    <dialog ref={ref} className={wide ? 'dialog dialog--wide' : 'dialog'} aria-labelledby="dialog-title" {...events}>
      <h2 id="dialog-title">{title}</h2>
      {children}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          shut();
        }}
      >
        <button ref={close} type="submit" className="button">
          Close
        </button>
      </form>
    </dialog>
  );
}

interface RefusedProps {
  readonly name: string;
  readonly problems: readonly FileProblem[];
  readonly after: 'plans' | null;
}

/** Maximum number of listed problems; the others are counted. */
const MOST_LISTED = 200;

function Refused({ name, problems, after }: RefusedProps) {
  return (
    <Frame
      title={`${name} ${after ? 'not imported' : 'was not opened'}`}
      closeFirst
      onClose={() => showDialog(after ? { kind: after } : null)}
    >
      <p>
        {counted(problems.length, 'thing')} in it {problems.length === 1 ? 'is' : 'are'} not valid in a plan file. The
        open plan is unchanged.
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
            {problems.slice(0, MOST_LISTED).map(({ place, found, expected }) => (
              <tr key={`${place} ${found} ${expected}`}>
                <td className="figures">{place}</td>
                <td>{found}</td>
                <td>{expected}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {problems.length > MOST_LISTED && <p>And {problems.length - MOST_LISTED} more.</p>}
      </section>
    </Frame>
  );
}

/** Asks what to do with the open plan, which could not be stored, before another one is opened. */
function Leave({ why, go }: { readonly why: string; readonly go: () => void }) {
  const title = useAppStore((state) => state.plan.title.trim());
  const leave = () => {
    showDialog(null);
    go();
  };
  return (
    <Frame title={`${title || 'This plan'} is not saved yet`}>
      <p>{why}</p>
      <div className="buttons">
        <button type="button" className="button button--main" onClick={() => void saveWhole().then(leave)}>
          Save it as a file and continue
        </button>
        <button type="button" className="button" onClick={leave}>
          Continue without it
        </button>
      </div>
    </Frame>
  );
}
