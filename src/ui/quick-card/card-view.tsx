import { useEffect, useMemo, useState } from 'react';
import {
  type CardFact,
  type CardSection,
  cardCautions,
  cardSections,
  LOOKED_TITLE,
  OPEN_TITLE,
  placeFacts,
  SKETCH_KEY,
  timeFacts,
  twoKits,
} from '../../quick-card/card-texts.ts';
import { describeCard, type QuickCard } from '../../quick-card/describe-card.ts';
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

/** mm of paper; on screen it is as wide as the page. */
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
          The time to place it has passed. Not placed yet? Change the answers and choose another time.
        </p>
      )}
      <ResultPart plan={plan} onClose={onClose} />
      {card.spot ? <Spot card={card} /> : <NoSpot card={card} />}
      <CardActions card={card} onChange={changeAnswers} onAnother={() => void anotherCard()} onClose={onClose} />
      <LookPoints card={card} />
      {cardSections(card)
        .filter(({ title }) => title !== OPEN_TITLE)
        .map((section) => (
          <Section key={section.title} section={section} />
        ))}
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
      <p className="quick-card__verdict" role="status">
        <VerdictMark verdict={spot.tone} size={24} /> <strong>{spot.headline}</strong>
      </p>
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

/** Returns the sketch: at first in a font of the system, then in that of the page, which a picture has to hold itself. */
function useSketch(card: QuickCard): string {
  const plain = useMemo(() => sketchPicture(card, SKETCH.width, SKETCH.height), [card]);
  const [withFont, setWithFont] = useState<{ readonly plain: string; readonly picture: string } | null>(null);
  useEffect(() => {
    let isGone = false;
    // Where the font cannot be had the sketch stays as it is: it can be read.
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

/** What somebody has to look at. A second press takes a look back; nothing moves for it. */
function LookPoints({ card }: { readonly card: QuickCard }) {
  const { spot, level } = card;
  if (!spot || spot.points.length === 0) return null;
  const title = spot.open.length > 0 ? OPEN_TITLE : LOOKED_TITLE;
  const press = (point: LookPoint) =>
    useAppStore.getState().run((plan) => withLooked(plan, level.id, point, Date.now()));
  return (
    <section className="quick-card__open" aria-label={title}>
      <h3>{title}</h3>
      <ul className="quick-card__list">
        {spot.points.map((point) => (
          <li key={point.rule} data-open={point.isOpen}>
            {point.says && (
              <button type="button" className="button" aria-pressed={!point.isOpen} onClick={() => press(point)}>
                {point.says}
              </button>
            )}
            <p>{point.words}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
