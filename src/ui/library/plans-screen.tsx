import { type RefObject, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { saveLibrary } from '../../commands/import-plans.ts';
import { showLibraryMessage, useLibraryMessage } from '../../commands/library-message.ts';
import { closeLibrary, openFromLibrary } from '../../commands/open-and-save.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { findIn, ORDERS, type Order, onBoards } from '../../storage/library/search.ts';
import { useOpenPlan } from '../../storage/open-plan.ts';
import { readSetting, writeSetting } from '../../storage/settings.ts';
import { CommandButton } from '../shell/command-button.tsx';
import { Cautions } from '../verdict/cautions.tsx';
import { DeletedPlans } from './deleted-plans.tsx';
import { PlanCardView } from './plan-card.tsx';
import { PlanDetails } from './plan-details.tsx';
import { Samples } from './samples.tsx';
import { StorageLine } from './storage-line.tsx';
import { useArrowKeys } from './use-arrow-keys.ts';
import { usePlanSummaries } from './use-summaries.ts';
import './plans-screen.css';

/** The shelf: every plan in this browser, and what can be done with it. It takes the whole page. */
export function PlansScreen() {
  const dialog = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
    // On a tablet the field would bring up the keys of the screen, over half the shelf.
    if (window.matchMedia('(pointer: coarse)').matches) focusHeading();
    else field.current?.focus();
    return () => showLibraryMessage('');
  }, []);
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
              Nothing stands here yet. Whatever you draw is kept here by itself, in this browser on this device.
            </p>
          )}
          <Boards summaries={listed} looked={looked} order={order} now={now} chosenId={chosenId} choose={setChosenId} />
          {looked === '' && <Samples />}
          <DeletedPlans summaries={summaries.filter(({ binnedAt }) => binnedAt !== null)} now={now} />
          <Foot hasPlans={listed.length > 0} isEmpty={summaries.length === 0} />
        </div>
        {chosen && (
          <PlanDetails key={chosen.id} summary={chosen} now={now} onClose={hideDetails} onTrashed={leaveDetails} />
        )}
      </div>
    </dialog>
  );
}

interface HeadProps {
  readonly field: RefObject<HTMLInputElement | null>;
  readonly looked: string;
  readonly onLook: (looked: string) => void;
  readonly order: Order;
  readonly onOrder: (order: Order) => void;
}

/** Search, order, and the ways to another plan. */
function Head({ field, looked, onLook, order, onOrder }: HeadProps) {
  return (
    <header className="plans__head">
      <h2 id={HEADING} tabIndex={-1}>
        Plans
      </h2>
      <label className="plans__search">
        <span className="unseen">Look for a title, place, room or detector</span>
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
        aria-label="In which order"
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
        <CommandButton command="open">Open a file</CommandButton>
        <button type="button" className="button" onClick={closeLibrary}>
          Back to the sheet
        </button>
      </div>
      <MessageOfLibrary />
    </header>
  );
}

/** The browser's storage, and the library as one file. */
function Foot({ hasPlans, isEmpty }: { readonly hasPlans: boolean; readonly isEmpty: boolean }) {
  return (
    <footer className="plans__foot">
      <StorageLine hasPlans={hasPlans} />
      <div className="buttons">
        <button type="button" className="button" disabled={isEmpty} onClick={() => void saveLibrary()}>
          Save everything in one file
        </button>
        <CommandButton command="open">Take in such a file</CommandButton>
      </div>
      <Cautions />
    </footer>
  );
}

const HEADING = 'plans-heading';

/** Where the keyboard goes on when what it stood on is gone. */
function focusHeading(): void {
  document.getElementById(HEADING)?.focus();
}

const NO_SUMMARIES: readonly PlanSummary[] = [];

/** The order is remembered from one visit to the next. */
function useOrder(): readonly [Order, (order: Order) => void] {
  const [order, setOrder] = useState<Order>('changed');
  useEffect(() => {
    void readSetting('shelf-order').then((kept) => {
      if (typeof kept === 'string' && kept in ORDERS) setOrder(kept as Order);
    });
  }, []);
  return [
    order,
    (next) => {
      setOrder(next);
      void writeSetting('shelf-order', next);
    },
  ];
}

/** What was done last. The line keeps its place, so that nothing jumps under the finger. */
function MessageOfLibrary() {
  const { message, undo } = useLibraryMessage();
  return (
    <div className="plans__said">
      <p role="status">{message}</p>
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

interface BoardsProps {
  readonly summaries: readonly PlanSummary[];
  readonly looked: string;
  readonly order: Order;
  readonly now: number;
  readonly chosenId: string;
  readonly choose: (id: string) => void;
}

function Boards({ summaries, looked, order, now, chosenId, choose }: BoardsProps) {
  const openId = useOpenPlan(({ id }) => id);
  const found = useMemo(() => {
    const where = new Map<string, string>();
    for (const summary of summaries) {
      const finding = findIn(summary, looked);
      if (finding.found) where.set(summary.id, finding.where);
    }
    return where;
  }, [summaries, looked]);
  const boards = useMemo(
    () =>
      onBoards(
        summaries.filter(({ id }) => found.has(id)),
        order,
        now,
      ),
    [summaries, found, order, now],
  );
  const walk = useArrowKeys(boards.flatMap((board) => board.summaries.map(({ id }) => id)));
  const open = useCallback((summary: PlanSummary) => void openFromLibrary(summary.id), []);
  const more = useCallback((summary: PlanSummary) => choose(summary.id), [choose]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the arrows are a short cut between the buttons inside
    <div className="boards" data-order={order} onKeyDown={walk.onKeyDown} onFocus={walk.onFocus}>
      {looked !== '' && (
        <p role="status">{found.size === 0 ? `No plan has "${looked}".` : `${counted(found.size, 'plan')} found.`}</p>
      )}
      {boards.map((board) => (
        <section key={board.title} className="board" aria-label={board.title}>
          <h3>
            {board.title} <span className="board__count">{board.summaries.length}</span>
          </h3>
          <ul className="board__boxes">
            {board.summaries.map((summary) => (
              <PlanCardView
                key={summary.id}
                summary={summary}
                now={now}
                where={found.get(summary.id) ?? ''}
                isOpen={summary.id === openId}
                isChosen={summary.id === chosenId}
                tabStop={summary.id === walk.stop}
                onOpen={open}
                onMore={more}
              />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
