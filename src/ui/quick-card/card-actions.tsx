import { useEffect, useState } from 'react';
import type { Plan } from '../../../geometry/plan/model.ts';
import { openStage, openVisit } from '../../commands/panels.ts';
import { troubleOf, usualPaper } from '../../commands/sheet-files.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import type { QuickCard } from '../../quick-card/describe-card.ts';
import { hasBegun } from '../../quick-card/made-again.ts';
import { pageSize } from '../../report/paper.ts';
import { PrintedPages, printPages } from '../print/printed-pages.tsx';
import { canShare, cardPage, cardPicture, saveCalendar, sharePicture } from './card-files.ts';

interface Props {
  readonly card: QuickCard;
  readonly onChange: () => void;
  readonly onAnother: () => void;
  readonly onClose: () => void;
}

interface Made {
  readonly picture: File;
  /** URL of the page as a drawing, for printing. */
  readonly address: string;
}

/** The actions on a card: share, print, calendar, other answers. */
export function CardActions({ card, onChange, onAnother, onClose }: Props) {
  const { made, trouble } = useMade(card);
  const [said, setSaid] = useState('');
  return (
    <section className="quick-card__actions" aria-label="What to do with the card">
      <div className="buttons">
        {card.spot && <SpotActions card={card} made={made} onDone={setSaid} />}
        {(card.spot || hasBegun(card.plan)) && <WriteDown plan={card.plan} onClose={onClose} />}
        <button type="button" className={card.spot ? 'button' : 'button button--main'} onClick={onChange}>
          Change the answers
        </button>
        <button type="button" className="button" onClick={onAnother}>
          Another room
        </button>
      </div>
      <p className="small" role="status">
        {trouble ||
          said ||
          'The card is kept under Plans on this device. It prints upright, on one page: to hang or lie beside the kit.'}
      </p>
      {made && <PrintedPages page={pageSize(usualPaper(card.plan), 'portrait')} addresses={[made.address]} />}
    </section>
  );
}

interface SpotActionsProps extends Pick<Props, 'card'> {
  readonly made: Made | null;
  /** Called with a message that says what was done. */
  readonly onDone: (words: string) => void;
}

function SpotActions({ card, made, onDone }: SpotActionsProps) {
  return (
    <>
      <button
        type="button"
        className="button button--main"
        disabled={!made}
        onClick={() => made && void sharePicture(made.picture, card.plan.title).then(onDone)}
      >
        {made && canShare(made.picture) ? 'Share as a picture' : 'Save as a picture'}
      </button>
      <button type="button" className="button" disabled={!made} onClick={() => void printCard().then(onDone)}>
        Print
      </button>
      {card.times.known && (
        <button type="button" className="button" onClick={() => void saveCalendar(card, Date.now()).then(onDone)}>
          Save the times for a calendar
        </button>
      )}
    </>
  );
}

/** Buttons that lead to the next record of the test in the full app. */
function WriteDown({ plan, onClose }: { readonly plan: Plan; readonly onClose: () => void }) {
  const { visit } = plan;
  const isPlaced = recordedStart(visit) !== null;
  const visitWords = isPlaced ? 'Write down when you picked it up' : 'Write down when you placed it';
  const go = (open: () => void) => () => {
    open();
    onClose();
  };
  return (
    <>
      {(!isPlaced || visit.end === null) && (
        <button type="button" className="button" onClick={go(openVisit)}>
          {visitWords}
        </button>
      )}
      <button type="button" className="button" onClick={go(() => openStage('read'))}>
        Write down the result
      </button>
    </>
  );
}

/** Makes the picture in advance, because a share sheet opens only right after a press. */
function useMade(card: QuickCard): { readonly made: Made | null; readonly trouble: string } {
  const [made, setMade] = useState<Made | null>(null);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    let gone = false;
    Promise.all([cardPicture(card), cardPage(card)]).then(
      ([picture, svg]) => {
        if (gone) return;
        setMade({ picture, address: `data:image/svg+xml,${encodeURIComponent(svg)}` });
      },
      (error: unknown) => !gone && setTrouble(troubleOf(error)),
    );
    return () => {
      gone = true;
    };
  }, [card]);
  return { made, trouble };
}

async function printCard(): Promise<string> {
  try {
    await printPages();
    return '';
  } catch {
    return 'The card could not be drawn for the printer. Save it as a picture and print that.';
  }
}
