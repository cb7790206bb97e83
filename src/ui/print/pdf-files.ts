import { computedTwice, sheetPages, today, troubleOf } from '../../commands/sheet-files.ts';
import { partMissing } from '../../platform/part-missing.ts';
import type { VisitDocument } from '../../report/documents/draw-document.ts';
import type { PageChoice } from '../../report/paper.ts';
import { useAppStore } from '../../state/store.ts';
import { downloadFile, fileStem } from '../../storage/plan-files.ts';
import { DOCUMENT_NAMES, jobPaperPages } from './paper-files.ts';

/** Sheets and documents as PDF files. The code that makes them is loaded on demand. */

/** Saves the sheets of the level in view as one PDF. Shows a message that says where it is, or why it could not be saved. */
export async function saveSheetPdf(choice: PageChoice, showTracing: boolean): Promise<void> {
  await inWords(async () => save(await pdfFile(await sheetPages(choice, showTracing), '')));
}

/** Saves a document as one PDF. Shows a message that says where it is, or why it could not be saved. */
export async function saveDocumentPdf(which: VisitDocument, choice: PageChoice): Promise<void> {
  await inWords(async () => save(await documentPdf(which, choice)));
}

/** Shares the sheets of the level in view by the system's share sheet; downloads them if there is none. */
export async function shareSheetPdf(choice: PageChoice, showTracing: boolean): Promise<void> {
  await inWords(async () => share(await pdfFile(await sheetPages(choice, showTracing), ''), 'Plan sheet'));
}

/** Shares a document by the system's share sheet; downloads it if there is none. */
export async function shareDocumentPdf(which: VisitDocument, choice: PageChoice): Promise<void> {
  await inWords(async () => share(await documentPdf(which, choice), DOCUMENT_NAMES[which]));
}

async function share(made: Made, name: string): Promise<string> {
  if (!canShareFiles(made.file)) return save(made);
  try {
    await navigator.share({ files: [made.file], title: name });
    return `${name}: shared.${lackingWords(made)}`;
  } catch (error) {
    // The user canceled.
    if (error instanceof DOMException && error.name === 'AbortError') return '';
    return save(made);
  }
}

/** Returns whether the system has a share sheet for files. */
export function canShareFiles(file = new File([''], 'a.pdf', { type: 'application/pdf' })): boolean {
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] });
}

const DATA_TYPES = { csv: 'text/csv', json: 'application/json' } as const;

/**
 * Saves the report for other programs: its results as a CSV table, or all of it as JSON. Shows a message that says where the file is, or why
 * it could not be saved.
 */
export async function saveReportData(format: keyof typeof DATA_TYPES): Promise<void> {
  await inWords(async () => {
    const [{ reportContent }, { reportJson, reportTable }, { csv }, { sunAtOnce }] = await Promise.all([
      import('../../report/documents/report-content.ts'),
      import('../../report/documents/report-data.ts'),
      import('../../protocol/csv.ts'),
      import('../../state/direct-sun.ts'),
    ]).catch(partMissing);
    const { plan } = useAppStore.getState();
    const computed = await computedTwice(plan);
    const content = sunAtOnce(() => reportContent(plan, computed, Date.now()));
    const text = format === 'csv' ? csv(reportTable(content)) : `${JSON.stringify(reportJson(content), null, 2)}\n`;
    const name = `${fileStem(plan.title)}-report.${format}`;
    downloadFile(name, new Blob([text], { type: DATA_TYPES[format] }));
    return `${name} is in your downloads.`;
  });
}

interface Made {
  readonly file: File;
  readonly lacking: readonly string[];
}

async function documentPdf(which: VisitDocument, choice: PageChoice): Promise<Made> {
  return pdfFile(await jobPaperPages(which, choice), `-${which}`);
}

async function pdfFile(pages: readonly string[], ending: string): Promise<Made> {
  const [{ pagesToPdf }, { loadFontFiles }] = await Promise.all([
    import('../../report/pdf/pdf.ts'),
    import('../../report/pdf/browser-fonts.ts'),
  ]).catch(partMissing);
  const { plan } = useAppStore.getState();
  const { title } = plan;
  const { bytes, lacking } = await pagesToPdf(pages, {
    title: title || 'Plan without a title',
    date: today(plan),
    fonts: await loadFontFiles(),
  });
  const name = `${fileStem(title)}${ending}.pdf`;
  return { file: new File([bytes as BlobPart], name, { type: 'application/pdf' }), lacking };
}

function save(made: Made): string {
  downloadFile(made.file.name, made.file);
  return `${made.file.name} is in your downloads.${lackingWords(made)}`;
}

function lackingWords({ lacking }: Made): string {
  return lacking.length > 0
    ? ` The font of the pages lacks these letters, drawn as empty boxes: ${lacking.join(' ')}`
    : '';
}

async function inWords(work: () => Promise<string>): Promise<void> {
  const { say } = useAppStore.getState();
  say('Making the file…');
  try {
    say(await work());
  } catch (error) {
    say(troubleOf(error));
  }
}
