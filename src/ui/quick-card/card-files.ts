import type { Plan } from '../../../geometry/plan/model.ts';
import { today, troubleOf, usualPaper } from '../../commands/sheet-files.ts';
import { partMissing } from '../../platform/part-missing.ts';
import { cardPageSize, drawCardPage } from '../../quick-card/card-page.ts';
import { describeCard, type QuickCard } from '../../quick-card/describe-card.ts';
import { downloadFile, fileStem } from '../../storage/plan-files.ts';

/** Files of the card: a picture to share, a page to print, a calendar. */

/** Returns the page of a card as SVG text with the embedded font. Throws if the code cannot be loaded. */
export async function cardPage({ plan }: QuickCard): Promise<string> {
  const { withEmbeddedFont } = await import('../../report/embedded-font.ts').catch(partMissing);
  return withEmbeddedFont(drawCardPage(await checkedTwice(plan), { paper: usualPaper(plan), date: today(plan) }));
}

/** Returns the sketch with the embedded font. Throws if the font cannot be loaded. */
export async function sketchWithFont(sketch: string): Promise<string> {
  const { withEmbeddedFont } = await import('../../report/embedded-font.ts').catch(partMissing);
  return withEmbeddedFont(sketch);
}

/** Returns the page of a card as a PNG. Throws if the code cannot be loaded. */
export async function cardPicture({ plan }: QuickCard): Promise<File> {
  const { exportPageImage } = await import('../../report/png.ts').catch(partMissing);
  const paper = usualPaper(plan);
  const page = drawCardPage(await checkedTwice(plan), { paper, date: today(plan) });
  const picture = await exportPageImage(page, cardPageSize(paper));
  return new File([picture], `${fileStem(plan.title)}.png`, { type: 'image/png' });
}

/** Returns the card after the spot was computed a second time. If the two results differ, the card has no spot. */
async function checkedTwice(plan: Plan): Promise<QuickCard> {
  const [{ opinionsOf }, { sunAtOnce }] = await Promise.all([
    import('../../state/second-opinion-at-rest.ts'),
    import('../../state/direct-sun.ts'),
  ]).catch(partMissing);
  const { doubts } = await opinionsOf(plan);
  return sunAtOnce(() => describeCard(plan, doubts));
}

/** Returns whether the system has a share sheet for pictures. */
export function canShare(picture: File): boolean {
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [picture] });
}

/** Shares the picture by the system's share sheet; downloads it if there is none. Returns what was done, in words; empty if canceled. */
export async function sharePicture(picture: File, title: string): Promise<string> {
  if (canShare(picture)) {
    try {
      await navigator.share({ files: [picture], title });
      return 'The card was shared.';
    } catch (error) {
      // The user canceled.
      if (error instanceof DOMException && error.name === 'AbortError') return '';
    }
  }
  downloadFile(picture.name, picture);
  return `${picture.name} is in your downloads.`;
}

/** Saves the visit for a calendar. Returns a message that says where it is, or why it could not be saved. */
export async function saveCalendar({ plan }: QuickCard, now: number): Promise<string> {
  try {
    const { calendarText } = await import('../../protocol/calendar/ics.ts').catch(partMissing);
    const name = `${fileStem(plan.title)}.ics`;
    downloadFile(name, new Blob([calendarText(plan, now)], { type: 'text/calendar' }));
    return `${name} is in your downloads. Open it to put the times in your calendar.`;
  } catch (error) {
    return troubleOf(error);
  }
}
