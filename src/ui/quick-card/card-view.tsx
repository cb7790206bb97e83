import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { GROUP_IDS, type GroupId } from '../../quick-card/answers.ts';
import {
  type CardFact,
  type CardSection,
  cardCautions,
  cardSections,
  LOOKED_TITLE,
  OPEN_TITLE,
  openSentence,
  placeFacts,
  SKETCH_KEY,
  timeFacts,
  twoKits,
} from '../../quick-card/card-texts.ts';
import { type CardSpot, describeCard, type QuickCard } from '../../quick-card/describe-card.ts';
import { type LookPoint, withLooked } from '../../quick-card/look-points.ts';
import { sketchPicture } from '../../quick-card/sketch.ts';
import { isPast } from '../../quick-card/times.ts';
import { NO_DOUBTS } from '../../state/second-opinion.ts';
import { useAppStore } from '../../state/store.ts';
import { sunVersion } from '../../state/sun-version.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { CardActions } from './card-actions.tsx';
import { sketchWithFont } from './card-files.ts';
import { anotherCard, changeAnswers } from './quick-card-store.ts';
import { ResultPart } from './result-part.tsx';

/** Size of the sketch on paper, mm; on screen it is as wide as the page. */
const SKETCH = { width: 96, height: 92 } as const;

/** The card of the open plan. */
export function CardView({ onClose }: { readonly onClose: () => void }) {
  const plan = useAppStore((state) => state.plan);
  const doubts = useAppStore(({ second }) => second?.doubts ?? NO_DOUBTS);
  const sun = useAppStore(sunVersion);
  // biome-ignore lint/correctness/useExhaustiveDependencies: direct sun that was worked out since changes the verdict
  const card = useMemo(() => describeCard(plan, doubts), [plan, doubts, sun]);
  const [now] = useState(Date.now);
  return (
    <div className="quick__page quick-card">
      {isPast(plan, now) && (
        <p className="quick-card__late" role="alert">
          The time to place it has passed. Placed? Write down when. Not placed yet? Change the answers and choose
          another time.
        </p>
      )}
      <ResultPart plan={plan} onClose={onClose} />
      {card.spot ? <Spot card={card} /> : <NoSpot card={card} />}
      <CardActions
        card={card}
        onChange={() => changeAnswers()}
        onAnother={() => void anotherCard()}
        onClose={onClose}
      />
      <LookPoints card={card}>
        {cardSections(card)
          .filter(({ title }) => title !== OPEN_TITLE)
          .map((section) => (
            <Section key={section.title} section={section} />
          ))}
      </LookPoints>
      <p>{twoKits(card)}</p>
      <p className="fine soft">{cardCautions().join(' ')}</p>
    </div>
  );
}

function Spot({ card }: { readonly card: QuickCard }) {
  const { spot, times, plan } = card;
  const picture = useSketch(card);
  if (!spot) return null;
  const place = placeFacts(spot);
  return (
    <>
      <VerdictPart spot={spot} />
      <h3 className="unseen">Where and when</h3>
      <div className="quick-card__top">
        <img
          className="quick-card__sketch"
          src={`data:image/svg+xml,${encodeURIComponent(picture)}`}
          alt={`Sketch of the room. ${place[0]?.text ?? ''}`}
        />
        <dl className="quick-card__facts">
          {[...place, ...timeFacts(times)].map((fact) => (
            <Fact key={fact.name} fact={fact} />
          ))}
          {!times.known && <Fact fact={{ name: 'When', text: times.why }} />}
        </dl>
      </div>
      <p className="small soft">{SKETCH_KEY}</p>
      <p className="small soft">Local time at the property ({plan.site.timeZone.replaceAll('_', ' ')}).</p>
    </>
  );
}

/** The verdict, and what is still open. Room is reserved for the longer of the two sentences, so that nothing below moves. */
function VerdictPart({ spot }: { readonly spot: CardSpot }) {
  const sentence = openSentence(spot);
  const [first] = useState(sentence);
  return (
    <div className="quick-card__result-line" role="status">
      <p className="quick-card__verdict">
        <VerdictMark verdict={spot.tone} size={24} /> <strong>{spot.headline}</strong>
      </p>
      {(first ?? sentence) !== null && (
        <p className="quick-card__still">
          <SteadyText text={sentence ?? 'Nothing is open any more: you have looked.'} other={first} />
        </p>
      )}
      {spot.open.length > 0 && (
        <button type="button" className="button" onClick={() => document.getElementById(OPEN_LIST)?.scrollIntoView()}>
          See what is open
        </button>
      )}
    </div>
  );
}

interface SteadyTextProps {
  readonly text: string;
  /** Another text that may replace this one, and for which room is reserved. */
  readonly other: string | null;
}

/** A text with the height of the higher of two texts, so that replacing one by the other moves nothing below. */
function SteadyText({ text, other }: SteadyTextProps) {
  return (
    <span className="steady">
      <span>{text}</span>
      {other !== null && other !== text && (
        <span className="steady__other" aria-hidden="true">
          {other}
        </span>
      )}
    </span>
  );
}

/** Returns the sketch, first with a system font, then with the font of the page, which must be embedded in a picture. */
function useSketch(card: QuickCard): string {
  const plain = useMemo(() => sketchPicture(card, SKETCH.width, SKETCH.height), [card]);
  const [withFont, setWithFont] = useState<{ readonly plain: string; readonly picture: string } | null>(null);
  useEffect(() => {
    let isGone = false;
    // If the font cannot be loaded, the sketch keeps the system font.
    sketchWithFont(plain).then(
      (picture) => !isGone && setWithFont({ plain, picture }),
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [plain]);
  return withFont?.plain === plain ? withFont.picture : plain;
}

function Fact({ fact: { name, text } }: { readonly fact: CardFact }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{text}</dd>
    </div>
  );
}

function NoSpot({ card: { noSpot } }: { readonly card: QuickCard }) {
  if (!noSpot) return null;
  return (
    <section className="quick-card__none" aria-labelledby="no-spot">
      <h3 id="no-spot">No spot yet</h3>
      <p>{noSpot.why}</p>
      <h4>What would help</h4>
      <ul className="quick-card__list">
        {noSpot.helps.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}

function Section({ section: { title, items } }: { readonly section: CardSection }) {
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      <ul className="quick-card__list">
        {items.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}

const TAKE_BACK = 'Take it back';

/** The id of the list of open points. */
const OPEN_LIST = 'quick-card-open';

/**
 * The points to look at, and below the rest of the card those that the user has looked at. A point that is closed here stays in its place,
 * where a second press opens it again: if the next point moved under the finger, a double press would close that one too.
 */
function LookPoints({ card, children }: { readonly card: QuickCard; readonly children: ReactNode }) {
  const { spot, level } = card;
  const [touched, setTouched] = useState<ReadonlyMap<RuleId, LookPoint>>(new Map());
  if (!spot) return children;
  const press = (point: LookPoint) => {
    setTouched((before) => (before.has(point.rule) ? before : new Map(before).set(point.rule, point)));
    useAppStore.getState().run((plan) => withLooked(plan, level.id, point, Date.now()));
  };
  const stays = ({ rule, isOpen }: LookPoint) => isOpen || touched.get(rule)?.isOpen === true;
  const here = spot.points.filter(stays);
  const done = spot.points.filter((point) => !stays(point) && point.says !== null);
  const title = spot.open.length > 0 ? OPEN_TITLE : 'Nothing is open any more';
  return (
    <>
      {here.length > 0 && (
        <section className="quick-card__open" id={OPEN_LIST} aria-label={title}>
          <h3>
            <SteadyText text={title} other={OPEN_TITLE} />
          </h3>
          <ul className="quick-card__list">
            {here.map((point) => (
              <OpenPoint key={point.rule} point={point} first={touched.get(point.rule) ?? point} onPress={press} />
            ))}
          </ul>
        </section>
      )}
      {children}
      {done.length > 0 && (
        <section className="quick-card__looked" aria-label={LOOKED_TITLE}>
          <h3>{LOOKED_TITLE}</h3>
          <ul className="quick-card__list">
            {done.map((point) => (
              <li key={point.rule}>
                <p>{point.words}</p>
                <button
                  type="button"
                  className="button"
                  aria-label={`${TAKE_BACK}: ${point.name.toLowerCase()}`}
                  onClick={() => press(point)}
                >
                  {TAKE_BACK}
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

interface OpenPointProps {
  readonly point: LookPoint;
  /** The point before the first press. */
  readonly first: LookPoint;
  readonly onPress: (point: LookPoint) => void;
}

/** A point: its question, the answer that a press records, and the button that leads to the place of a thing. */
function OpenPoint({ point, first, onPress }: OpenPointProps) {
  const { rule, name, words, isOpen, says } = point;
  const question = questionOf(rule);
  const answerWords = question === 'support' ? 'Answer it' : 'There is one: mark where';
  return (
    <li data-open={isOpen}>
      <p>
        <SteadyText text={words} other={first.words} />
      </p>
      <div className="buttons">
        {says && (
          <button type="button" className="button" aria-pressed={!isOpen} onClick={() => onPress(point)}>
            {says}
          </button>
        )}
        {question && (
          <button
            type="button"
            className="button"
            aria-label={`${answerWords}: ${name.toLowerCase()}`}
            onClick={() => changeAnswers(question)}
          >
            {answerWords}
          </button>
        )}
      </div>
    </li>
  );
}

/** Returns the question that a point belongs to; null for none. */
const questionOf = (rule: RuleId): GroupId | 'support' | null =>
  OF_SUPPORT.includes(rule) ? 'support' : (GROUP_IDS.find((group) => group === rule) ?? null);
const OF_SUPPORT: readonly RuleId[] = ['support', 'height-band', 'ceiling'];
