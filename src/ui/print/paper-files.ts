import { computedTwice, today, troubleOf } from '../../commands/sheet-files.ts';
import { partMissing } from '../../platform/part-missing.ts';
import type { VisitDocument } from '../../report/documents/draw-document.ts';
import type { PageChoice } from '../../report/paper.ts';
import { useAppStore } from '../../state/store.ts';
import { downloadFile, fileStem } from '../../storage/plan-files.ts';

export const DOCUMENT_NAMES: Readonly<Record<VisitDocument, string>> = {
  notice: 'Notice to occupants',
  'entrance-notice': 'Notice for each entrance',
  'door-hanger': 'Door hanger',
  agreement: 'Non-interference agreement',
  'placement-card': 'Placement card',
  log: 'Log, chain of custody',
  report: 'Report of the test',
};

/** Returns the pages of a document as SVG text with the embedded font. Throws if the code, which is loaded on demand, cannot be loaded. */
export async function jobPaperDrawings(which: VisitDocument, choice: PageChoice): Promise<readonly string[]> {
  const { withEmbeddedFont } = await import('../../report/embedded-font.ts').catch(partMissing);
  return Promise.all((await jobPaperPages(which, choice)).map((svg) => withEmbeddedFont(svg)));
}

/** Returns the pages of a document as SVG text without the font. Throws if the code cannot be loaded. */
export async function jobPaperPages(which: VisitDocument, choice: PageChoice): Promise<readonly string[]> {
  const [{ drawDocument }, { sunAtOnce }] = await Promise.all([
    import('../../report/documents/draw-document.ts'),
    import('../../state/direct-sun.ts'),
  ]).catch(partMissing);
  const { plan } = useAppStore.getState();
  const computed = await computedTwice(plan);
  return sunAtOnce(() => drawDocument(which, { ...choice, plan, date: today(plan), now: Date.now(), computed }));
}

/** Saves each page of a document as an SVG drawing. Shows a message that says where it is, or why it could not be saved. */
export async function saveJobPaper(which: VisitDocument, choice: PageChoice): Promise<void> {
  const { plan, say } = useAppStore.getState();
  try {
    const pages = await jobPaperDrawings(which, choice);
    const stem = `${fileStem(plan.title)}-${which}`;
    pages.forEach((svg, i) => {
      const name = pages.length > 1 ? `${stem}-${i + 1}.svg` : `${stem}.svg`;
      downloadFile(name, new Blob([svg], { type: 'image/svg+xml' }));
    });
    say(pages.length > 1 ? `${pages.length} pages are in your downloads.` : `${stem}.svg is in your downloads.`);
  } catch (error) {
    say(troubleOf(error));
  }
}
