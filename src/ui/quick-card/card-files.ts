import type { Plan } from '../../../geometry/plan/model.ts';
import { today, troubleOf, usualPaper } from '../../commands/sheet-files.ts';
import { partMissing } from '../../platform/part-missing.ts';
import { cardPageSize, drawCardPage } from '../../quick-card/card-page.ts';
import { describeCard, type QuickCard } from '../../quick-card/describe-card.ts';
import { downloadFile, fileStem } from '../../storage/plan-files.ts';

/** The card as files: a picture to share, a page to print, a calendar. */

/** Returns the page of a card as SVG text that carries its own font. */
export async function cardPage({ plan }: QuickCard): Promise<string> {
  const { withEmbeddedFont } = await import('../../report/embedded-font.ts').catch(partMissing);
  return withEmbeddedFont(drawCardPage(await checkedTwice(plan), { paper: usualPaper(plan), date: today() }));
}

/** Returns the sketch with the font of the page in it. Rejects where that cannot be loaded. */
export async function sketchWithFont(sketch: string): Promise<string> {
  const { withEmbeddedFont } = await import('../../report/embedded-font.ts').catch(partMissing);
  return withEmbeddedFont(sketch);
}

/** Returns the page of a card as a PNG. */
export async function cardPicture({ plan }: QuickCard): Promise<File> {
  const { exportPageImage } = await import('../../report/png.ts').catch(partMissing);
  const paper = usualPaper(plan);
  const page = drawCardPage(await checkedTwice(plan), { paper, date: today() });
  const picture = await exportPageImage(page, cardPageSize(paper));
  return new File([picture], `${fileStem(plan.title)}.png`, { type: 'image/png' });
}

/** Nothing goes out before the spot is computed a second time: where the two differ, the page has no spot. */
async function checkedTwice(plan: Plan): Promise<QuickCard> {
  const [{ opinionsOf }, { sunAtOnce }] = await Promise.all([
    import('../../state/second-opinion-at-rest.ts'),
    import('../../state/direct-sun.ts'),
  ]).catch(partMissing);
  const { doubts } = await opinionsOf(plan);
  return sunAtOnce(() => describeCard(plan, doubts));
}

/** Whether the system has a share sheet that takes pictures. */
export function canShare(picture: File): boolean {
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [picture] });
}

/** Hands the picture to the system's share sheet, or to the downloads where there is none. Returns what happened, in words. */
export async function sharePicture(picture: File, title: string): Promise<string> {
  if (canShare(picture)) {
    try {
      await navigator.share({ files: [picture], title });
      return 'The card was shared.';
    } catch (error) {
      // The person changed their mind.
      if (error instanceof DOMException && error.name === 'AbortError') return '';
    }
  }
  downloadFile(picture.name, picture);
  return `${picture.name} is in your downloads.`;
}

/** Saves the visit for a calendar. Returns where it is, in words. */
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
