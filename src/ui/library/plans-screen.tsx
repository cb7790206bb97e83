import { type RefObject, useEffect, useRef, useState } from 'react';
import { saveLibrary } from '../../commands/import-plans.ts';
import { closeLibrary } from '../../commands/open-and-save.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { ORDERS, type Order } from '../../storage/library/search.ts';
import { showLibraryMessage, useLibrary } from '../../storage/library-state.ts';
import { readSetting, writeSetting } from '../../storage/settings.ts';
import { CommandButton } from '../shell/command-button.tsx';
import { Cautions } from '../verdict/cautions.tsx';
import { DeletedPlans } from './deleted-plans.tsx';
import { PlanDetails } from './plan-details.tsx';
import { PlanGroups } from './plan-groups.tsx';
import { Samples } from './samples.tsx';
import { StorageLine } from './storage-line.tsx';
import { usePlanSummaries } from './use-summaries.ts';
import './plans-screen.css';

/** The library: all plans in this browser, and their actions. It covers the whole page. */
export function PlansScreen() {
  const dialog = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLInputElement>(null);
  useOpened(dialog, field);
  const read = usePlanSummaries();
  const summaries = read.state === 'read' ? read.summaries : NO_SUMMARIES;
  const [looked, setLooked] = useState('');
  const [order, setOrder] = useOrder();
  const [chosenId, setChosenId] = useState('');
  const [now] = useState(Date.now);
  const chosen = summaries.find(({ id, binnedAt }) => id === chosenId && binnedAt === null);
  const hideDetails = () => {
    setChosenId('');
    document.querySelector<HTMLElement>(`[data-plan="${CSS.escape(chosenId)}"]`)?.focus();
  };
  const leaveDetails = () => {
    setChosenId('');
    focusHeading();
  };
  const listed = summaries.filter(({ binnedAt }) => binnedAt === null);
  return (
    <dialog
      ref={dialog}
      className="plans"
      aria-labelledby={HEADING}
      onCancel={(event) => {
        event.preventDefault();
        closeLibrary();
      }}
    >
      <Head field={field} looked={looked} onLook={setLooked} order={order} onOrder={setOrder} />
      <div className="plans__body">
        <div className="plans__list">
          {read.state === 'failed' && <p role="alert">{read.why}</p>}
          {read.state === 'read' && listed.length === 0 && (
            <p className="plans__none">
              No plans yet. Whatever you draw is saved here automatically, in this browser on this device.
            </p>
          )}
          <PlanGroups
            summaries={listed}
            looked={looked}
            order={order}
            now={now}
            chosenId={chosenId}
            choose={setChosenId}
          />
          {looked === '' && <Samples />}
          <DeletedPlans summaries={summaries.filter(({ binnedAt }) => binnedAt !== null)} now={now} />
          <Foot count={listed.length} isEmpty={summaries.length === 0} />
        </div>
        {chosen && (
          <PlanDetails key={chosen.id} summary={chosen} now={now} onClose={hideDetails} onTrashed={leaveDetails} />
        )}
      </div>
    </dialog>
  );
}

/** Opens the dialog and focuses the search field; on a tablet, the heading. */
function useOpened(dialog: RefObject<HTMLDialogElement | null>, field: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    // On a tablet a focused field opens the on-screen keyboard, which covers half the list.
    if (window.matchMedia('(pointer: coarse)').matches) focusHeading();
    else field.current?.focus();
    return () => showLibraryMessage('');
  }, [dialog, field]);
}

interface HeadProps {
  readonly field: RefObject<HTMLInputElement | null>;
  readonly looked: string;
  readonly onLook: (looked: string) => void;
  readonly order: Order;
  readonly onOrder: (order: Order) => void;
}

/** Search, order, and the buttons that open another plan. */
function Head({ field, looked, onLook, order, onOrder }: HeadProps) {
  return (
    <header className="plans__head">
      <h2 id={HEADING} tabIndex={-1}>
        Plans
      </h2>
      <label className="plans__search">
        <span className="unseen">Search for a title, place, room or detector</span>
        <input
          ref={field}
          type="search"
          className="plans__input"
          placeholder="Title, place, room, detector"
          value={looked}
          onChange={(event) => onLook(event.currentTarget.value)}
        />
      </label>
      <select
        className="plans__input plans__order"
        aria-label="Sort by"
        value={order}
        // The options are the names of the orders.
        onChange={(event) => onOrder(event.currentTarget.value as Order)}
      >
        {Object.entries(ORDERS).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
      <div className="plans__buttons">
        <CommandButton command="new-sheet" className="button button--main" />
        <CommandButton command="quick-card" />
        <CommandButton command="open">Open a file</CommandButton>
        <button type="button" className="button" onClick={closeLibrary}>
          Back to the plan
        </button>
      </div>
      <MessageOfLibrary />
    </header>
  );
}

/** The state of the browser's storage, and export and import of the library. */
function Foot({ count, isEmpty }: { readonly count: number; readonly isEmpty: boolean }) {
  return (
    <footer className="plans__foot">
      <StorageLine count={count} />
      <div className="buttons">
        <button type="button" className="button" disabled={isEmpty} onClick={() => void saveLibrary()}>
          Export all plans to one file
        </button>
        <CommandButton command="open">Import such a file</CommandButton>
      </div>
      <Cautions />
    </footer>
  );
}

const HEADING = 'plans-heading';

/** Focuses the heading, for when the focused element was removed. */
function focusHeading(): void {
  document.getElementById(HEADING)?.focus();
}

const NO_SUMMARIES: readonly PlanSummary[] = [];

/** Returns the order of the list, and the function that changes and stores it. */
function useOrder(): readonly [Order, (order: Order) => void] {
  const [order, setOrder] = useState<Order>('changed');
  useEffect(() => {
    void readSetting('library-order').then((kept) => {
      if (typeof kept === 'string' && kept in ORDERS) setOrder(kept as Order);
    });
  }, []);
  return [
    order,
    (next) => {
      setOrder(next);
      void writeSetting('library-order', next);
    },
  ];
}

/** The last message. The line is always there, so that nothing moves under a finger. */
function MessageOfLibrary() {
  const { text, undo } = useLibrary((library) => library.message);
  return (
    <div className="plans__said">
      <p role="status">{text}</p>
      {undo && (
        <button
          type="button"
          className="text-button"
          onClick={() => {
            showLibraryMessage('');
            focusHeading();
            void undo();
          }}
        >
          Undo
        </button>
      )}
    </div>
  );
}
