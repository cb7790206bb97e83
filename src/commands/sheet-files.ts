import type { Plan } from '../../geometry/plan/model.ts';
import { partMissing } from '../platform/part-missing.ts';
import { dayOfPrinting } from '../report/day-of-printing.ts';
import type { PageChoice, PaperName } from '../report/paper.ts';
import { selectLevel, selectProbe } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { downloadFile, fileStem } from '../storage/plan-files.ts';

/** Files of the marked-up sheet of the level in view. The code that draws it is loaded when it is needed. */

const say = (message: string): void => useAppStore.getState().say(message);

/** Returns the usual paper for the plan's units of length. */
export function usualPaper({ display }: Plan): PaperName {
  return display.length === 'metric' ? 'a4' : 'letter';
}

/** Saves all sheets of the level as one PNG. Shows a message that says where it is, or why it could not be saved. */
export async function savePicture(choice?: PageChoice, showTracing = false): Promise<void> {
  const { plan, options, levelId, stem } = order(choice, showTracing);
  say('Drawing the picture…');
  try {
    const { exportPlanImage } = await import('../report/png.ts').catch(partMissing);
    const computed = await computedTwice(plan);
    const picture = await exportPlanImage(plan, levelId, { ...options, computed });
    downloadFile(`${stem}.png`, picture);
    say(`${stem}.png is in your downloads.`);
  } catch (error) {
    say(troubleOf(error));
  }
}

/** Saves each sheet of the level as an SVG drawing, sharp at any size. */
export async function saveDrawings(choice?: PageChoice, showTracing = false): Promise<void> {
  const { stem } = order(choice, showTracing);
  try {
    const sheets = await sheetDrawings(choice, showTracing);
    sheets.forEach((svg, index) => {
      downloadFile(
        `${stem}${sheets.length > 1 ? `-${index + 1}` : ''}.svg`,
        new Blob([svg], { type: 'image/svg+xml' }),
      );
    });
    say(sheets.length > 1 ? `${sheets.length} drawings are in your downloads.` : `${stem}.svg is in your downloads.`);
  } catch (error) {
    say(troubleOf(error));
  }
}

/** Returns the sheets of the level in view as SVG text with the embedded font. Throws if the code cannot be loaded. */
export async function sheetDrawings(choice?: PageChoice, showTracing = false): Promise<readonly string[]> {
  const { withEmbeddedFont } = await import('../report/embedded-font.ts').catch(partMissing);
  return Promise.all((await sheetPages(choice, showTracing)).map((svg) => withEmbeddedFont(svg)));
}

/** Returns the sheets of the level in view as SVG text without the font. Throws if the code cannot be loaded. */
export async function sheetPages(choice?: PageChoice, showTracing = false): Promise<readonly string[]> {
  const { plan, options, levelId } = order(choice, showTracing);
  const [{ drawSheets }, { sunAtOnce }] = await Promise.all([
    import('../report/draw-sheets.ts'),
    import('../state/direct-sun.ts'),
  ]).catch(partMissing);
  const computed = await computedTwice(plan);
  return sunAtOnce(() => drawSheets({ plan, levelId, ...options, computed }));
}

/** Returns the result of computing the verdicts twice, for printing. Throws if the code cannot be loaded. */
export async function computedTwice(plan: Plan) {
  const { opinionsOf } = await import('../state/second-opinion-at-rest.ts').catch(partMissing);
  return (await opinionsOf(plan)).computed;
}

function order(choice: PageChoice | undefined, showTracing: boolean) {
  const state = useAppStore.getState();
  const { plan } = state;
  const level = selectLevel(state);
  const name = [plan.title, plan.levels.length > 1 ? level.name : ''].filter(Boolean).join(' ');
  return {
    plan,
    levelId: level.id,
    stem: fileStem(name),
    options: {
      ...(choice ?? { paper: usualPaper(plan) }),
      date: today(plan),
      now: Date.now(),
      showTracing,
      // The allowed area on the sheet is that of its detectors; without detectors, that of the probe height on screen.
      ...(level.detectors.length === 0 ? { probe: selectProbe(state) } : {}),
    },
  };
}

/** Returns today's date at the site in ISO 8601 form. */
export function today(plan: Plan): string {
  return dayOfPrinting(plan, Date.now());
}

export function troubleOf(error: unknown): string {
  return error instanceof Error ? error.message : 'The plan sheet could not be drawn. Save the plan and try again.';
}
