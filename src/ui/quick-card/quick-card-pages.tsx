import { useEffect, useRef, useState } from 'react';
import { listed } from '../../../geometry/messages/index.ts';
import { closeLibrary } from '../../commands/open-and-save.ts';
import { answersOf } from '../../quick-card/answers.ts';
import { hasBegun, isDrawnOn } from '../../quick-card/made-again.ts';
import { NEEDED_WORDS, neededAnswers } from '../../quick-card/needed.ts';
import { hoursTrouble } from '../../quick-card/schedule.ts';
import { useAppStore } from '../../state/store.ts';
import { useModal } from '../hooks/use-modal.ts';
import { Cautions } from '../verdict/cautions.tsx';
import { CardView } from './card-view.tsx';
import { ClosingPart } from './closing-part.tsx';
import { LeafletPart } from './leaflet-part.tsx';
import { basePlan, beginAgain, beginQuickCard, makeCard, showCard, useQuickCard } from './quick-card-store.ts';
import { RoomPart } from './room-part.tsx';
import { SupportPart } from './support-part.tsx';
import { ThingsPart } from './things-part.tsx';
import './quick-card.css';

const HEADING = 'quick-card-heading';

/** The quick card, which covers the whole page: first the questions, then the card. */
export function QuickCardPages() {
  const { ref, shut, events } = useModal(closeLibrary);
  const shows = useQuickCard((state) => state.shows);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => void beginQuickCard(), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the other page begins at its head
  useEffect(() => {
    heading.current?.focus();
    ref.current?.scrollTo(0, 0);
    const { goTo } = useQuickCard.getState();
    const part = shows === 'questions' && goTo ? document.getElementById(`quick-${goTo}`) : null;
    part?.scrollIntoView({ block: 'start', behavior: 'instant' });
    part?.querySelector('button')?.focus({ preventScroll: true });
  }, [shows]);
  return (
    <dialog ref={ref} className="quick" aria-labelledby={HEADING} {...events}>
      <header className="quick__head">
        <h2 id={HEADING} ref={heading} tabIndex={-1}>
          Quick card
        </h2>
        <button type="button" className="button" onClick={shut}>
          {shows === 'card' ? 'Open in the full app' : 'Close'}
        </button>
      </header>
      {shows === 'questions' && <Questions />}
      {shows === 'card' && <CardView onClose={shut} />}
    </dialog>
  );
}

function Questions() {
  const answers = useQuickCard((state) => state.answers);
  const needed = neededAnswers(answers);
  const cannotBeMade = needed.length > 0 || hoursTrouble(basePlan(), answers.leaflet) !== null;
  const [refusal, setRefusal] = useState('');
  return (
    <>
      <div className="quick__page">
        <p>
          One room, one kit, for the people who live in the house: where to place it, when to start and when to pick it
          up. For a sale of the house the rules ask for more than this card has: use the full app, or a professional.
        </p>
        <Earlier />
        <WhatStays />
        <LeafletPart />
        <RoomPart />
        <ThingsPart />
        <SupportPart />
        <ClosingPart />
        <Cautions />
      </div>
      <footer className="quick__foot">
        <p className="small" role="status">
          {refusal}
          {needed.length === 0 && cannotBeMade && 'The hours of the leaflet cannot be met.'}
          {needed.length > 0 && `Still needed: ${listed(needed.map((each) => NEEDED_WORDS[each]))}.`}
        </p>
        <button
          type="button"
          className="button button--main"
          disabled={cannotBeMade}
          onClick={() => void makeCard(Date.now()).then(setRefusal)}
        >
          Make the card
        </button>
      </footer>
    </>
  );
}

/** Says what happens to the open plan when its card is made again: a placed kit stays, changes to the drawing are replaced. */
function WhatStays() {
  const remakes = useQuickCard((state) => state.remakes);
  const plan = useAppStore((state) => state.plan);
  if (!remakes || !(hasBegun(plan) || isDrawnOn(plan))) return null;
  return (
    <section className="quick__earlier" aria-label="What stays">
      {hasBegun(plan) && (
        <p>
          The kit is placed: it stays where it is, with its times. With other answers its place is checked again. To
          move the kit, begin another card.
        </p>
      )}
      {isDrawnOn(plan) && (
        <p>
          Something was drawn or changed in the full app. To make the card again draws the room from these answers
          alone; Undo in the full app brings the other drawing back.
        </p>
      )}
    </section>
  );
}

/** Buttons that lead to the card of the open plan, or discard answers that were given earlier. */
function Earlier() {
  const { isResumed, remakes } = useQuickCard();
  const title = useAppStore(({ plan }) => (answersOf(plan) ? plan.title : null));
  if (title === null && !isResumed) return null;
  return (
    <section className="quick__earlier" aria-label="Earlier">
      {isResumed && <p>These answers were given earlier. No card is made of them yet.</p>}
      <div className="buttons">
        {isResumed && (
          <button type="button" className="button" onClick={beginAgain}>
            {remakes ? 'Begin with the answers of the card' : 'Begin again'}
          </button>
        )}
        {title !== null && (
          <button type="button" className="button" onClick={showCard}>
            Back to the card: {title}
          </button>
        )}
      </div>
    </section>
  );
}
