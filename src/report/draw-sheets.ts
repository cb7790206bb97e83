/**
 * The marked-up plan of one level as SVG documents, one for each sheet: first the drawing with its notes, then the tables.
 * Pure: the same input gives the same text. Nothing is lost: notes that do not fit beside the drawing are on the sheets with the tables.
 */
import type { Plan } from '../../geometry/plan/model.ts';
import type { Computed } from '../../geometry/recheck/compare.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { usedHatches } from '../drawing/floor.ts';
import type { Ms } from '../protocol/timing/clock.ts';
import { columnBlocks, NOTE_FORMS, type NoteForm } from './column.ts';
import { formatPrinted } from './documents/format-times.ts';
import { type Drawing, drawEmptyLevel, drawLevel, levelScale } from './drawing.ts';
import { drawFilled, type Filled, type FlowItem, fillColumns, pour } from './flow.ts';
import { drawStrip, STRIP_MM } from './north-and-scale.ts';
import { leftOffLine, remarks } from './notes.ts';
import { contentArea, drawPage, type PageFacts } from './page-frame.ts';
import { type Area, inset, ORIENTATIONS, type Orientation, type PageChoice, type PageSize, pageSize } from './paper.ts';
import { COLOR, LINE_MM } from './style.ts';
import { type SubjectMatter, subjectMatter } from './subject-matter.ts';
import { group, line } from './svg.ts';
import { hatchDefinitions } from './svg-shapes.ts';
import { tableFlow } from './tables.ts';

export interface SheetOptions extends PageChoice {
  readonly plan: Plan;
  readonly levelId: string;
  /** Date of printing, ISO 8601 or as it is to be printed: this code has no clock. */
  readonly date: string;
  /** The detector that the allowed area is drawn for; left out, the level's first detector, or a common canister on a table. */
  readonly probe?: Probe;
  /** Whether the picture that the level was traced from is drawn faintly; left out, it is not. */
  readonly showTracing?: boolean;
  /** Outcome of the second computation by detector id; left out, the sheet states that verdicts were computed once. */
  readonly computed?: ReadonlyMap<string, Computed>;
  /** Time of printing, ms: events recorded for later have not happened yet. Left out, all recorded events have. */
  readonly now?: Ms;
}

/** The notes are in one column at the right, or in three under the drawing where that shows a long house larger. */
interface Arrangement {
  readonly drawing: Area;
  readonly columns: readonly Area[];
  /** The line between drawing and notes. */
  readonly parting: readonly [x1: number, y1: number, x2: number, y2: number];
}

const COLUMN_WIDTH = 70;
const PAD = 4;
const BLOCK_GAP = 3;

/** Returns all sheets of a level in order. Throws if the plan does not have the level. */
export function drawSheets(options: SheetOptions): readonly string[] {
  const { plan, levelId, probe, computed, now } = options;
  const matter = subjectMatter(plan, levelId, probe, computed, now);
  const layout = fittingLayout(matter, options);
  const first = firstSheet(matter, layout, options.showTracing);
  const area = inset(contentArea(layout.page), PAD);
  const pages = pour([...first.rest, ...tableFlow(matter, first.drawing?.leftOff ?? [], area.width)], area);
  const scale = first.drawing?.scale.words ?? '';
  const facts = (sheet: number) =>
    factsOf(matter, options, { page: layout.page, scale: sheet === 1 ? scale : '', sheet, sheets: pages.length + 1 });
  return [
    drawPage(facts(1), hatchDefinitions(usedHatches(matter.region, matter.zones)), first.drawn),
    ...pages.map((content, i) => drawPage(facts(i + 2), '', content)),
  ];
}

/** The sheet with the drawing only, for a report whose number of pages is not known yet. */
export interface PlanPage {
  readonly levelName: string;
  /** Remarks on the drawing and names without room on it, for the report to print: no sheets with tables follow. */
  readonly remarks: readonly string[];
  readonly draw: (sheet: number, sheets: number) => string;
}

/** Returns the page with the plan of one level. Throws if the plan does not have the level. */
export function planPage(options: SheetOptions): PlanPage {
  const { plan, levelId, probe, computed, now } = options;
  const matter: SubjectMatter = { ...subjectMatter(plan, levelId, probe, computed, now), paper: 'report' };
  const layout = fittingLayout(matter, options);
  const { drawn, drawing } = firstSheet(matter, layout, options.showTracing);
  const { page } = layout;
  const scale = drawing?.scale.words ?? '';
  const hatches = hatchDefinitions(usedHatches(matter.region, matter.zones));
  return {
    levelName: matter.level.name.trim() || matter.level.id,
    remarks: [...remarks(matter), leftOffLine(drawing?.leftOff ?? [])].filter(Boolean),
    draw: (sheet, sheets) =>
      drawPage({ ...factsOf(matter, options, { page, scale, sheet, sheets }), inDocument: true }, hatches, drawn),
  };
}

/** Returns the orientation that draws the level larger, landscape if both are alike. Throws if the plan does not have the level. */
export function fittingOrientation({ plan, levelId, paper, probe, computed }: SheetOptions): Orientation {
  return fittingLayout(subjectMatter(plan, levelId, probe, computed), { paper }).orientation;
}

interface Layout {
  readonly orientation: Orientation;
  readonly page: PageSize;
  readonly arrangement: Arrangement;
}

function fittingLayout(matter: SubjectMatter, { paper, orientation: asked }: PageChoice): Layout {
  const layouts = (asked ? [asked] : ORIENTATIONS).map((orientation): Layout => {
    const page = pageSize(paper, orientation);
    return { orientation, page, arrangement: arrange(matter, contentArea(page)) };
  });
  return layouts.reduce((best, each) => (isLarger(matter, each.arrangement, best.arrangement) ? each : best));
}

function factsOf(
  { level }: SubjectMatter,
  { plan, date }: SheetOptions,
  rest: Pick<PageFacts, 'page' | 'scale' | 'sheet' | 'sheets'>,
): PageFacts {
  return { ...rest, plan, levelName: level.name || level.id, date: formatPrinted(date, plan) };
}

/** Returns one sheet; left out, `sheet` is 1, the drawing. Throws if there is no such sheet. */
export function drawSheet({ sheet = 1, ...options }: SheetOptions & { readonly sheet?: number }): string {
  const sheets = drawSheets(options);
  const found = sheets[sheet - 1];
  if (found === undefined) throw new Error(`There are ${sheets.length} sheets, no sheet ${sheet}.`);
  return found;
}

interface FirstSheet {
  readonly drawn: string;
  readonly drawing: Drawing | null;
  /** Notes for which there was no room beside the drawing. */
  readonly rest: readonly FlowItem[];
}

function firstSheet(matter: SubjectMatter, { arrangement }: Layout, showTracing = false): FirstSheet {
  const { drawing: place, columns, parting } = arrangement;
  const field = { ...place, height: place.height - STRIP_MM };
  const drawing = drawLevel(matter, field, showTracing);
  const strip = { ...place, y: place.y + place.height - STRIP_MM, height: STRIP_MM };
  const { display, site } = matter.plan;
  const notes = fittingNotes(matter, columns);
  const drawn = [
    drawing
      ? group({ role: 'figure', 'aria-label': `Plan of ${matter.level.name || matter.level.id}` }, drawing.svg) +
        drawStrip(strip, {
          scale: drawing.scale,
          unit: display.length,
          ceiling: matter.level.ceilingAnswered === false ? null : matter.level.ceiling,
          unmeasuredWalls: matter.level.walls.filter(({ thicknessAnswered }) => thicknessAnswered === false).length,
          north: site.northAnswered === false ? null : site.north,
        })
      : drawEmptyLevel(field),
    line(...parting, { stroke: COLOR.ink, 'stroke-width': LINE_MM.box }),
    drawFilled(notes),
  ];
  return { drawn: drawn.join(''), drawing, rest: notes.rest.map((block) => ({ block, above: BLOCK_GAP })) };
}

/** The arrangement that shows the level largest; notes beside the drawing unless notes below it gain more than `WORTH`. */
function arrange(matter: SubjectMatter, area: Area): Arrangement {
  const side = besideDrawing(area);
  return NOTE_FORMS.map((form) => underDrawing(matter, area, form)).reduce(
    (best, each) => (isLarger(matter, each, best) ? each : best),
    side,
  );
}

/** Another arrangement is used only if it draws the level more than this factor larger. */
const WORTH = 1.1;

function isLarger(matter: SubjectMatter, one: Arrangement, other: Arrangement): boolean {
  return ratioIn(matter, one) * WORTH < ratioIn(matter, other);
}

/** House length over length on paper; 1 if nothing is drawn. */
function ratioIn(matter: SubjectMatter, { drawing }: Arrangement): number {
  return levelScale(matter, { ...drawing, height: drawing.height - STRIP_MM })?.ratio ?? 1;
}

function besideDrawing(area: Area): Arrangement {
  const x = area.x + area.width - COLUMN_WIDTH;
  return {
    drawing: { ...area, width: area.width - COLUMN_WIDTH },
    columns: [inset({ ...area, x, width: COLUMN_WIDTH }, PAD)],
    parting: [x, area.y, x, area.y + area.height],
  };
}

/** The band of notes is as high as they need, up to half of the sheet. */
function underDrawing(matter: SubjectMatter, area: Area, form: NoteForm): Arrangement {
  const width = (area.width - 4 * PAD) / 3;
  const blocks = columnBlocks(matter, width, form);
  const most = area.height / 2;
  let height = 30;
  while (height < most && fillColumns(blocks, threeColumns(area, width, height), BLOCK_GAP).rest.length > 0)
    height += 1;
  const y = area.y + area.height - height - 2 * PAD;
  return {
    drawing: { ...area, height: y - area.y },
    columns: threeColumns({ ...area, y: y + PAD }, width, height),
    parting: [area.x, y, area.x + area.width, y],
  };
}

function threeColumns({ x, y }: Area, width: number, height: number): readonly Area[] {
  return [0, 1, 2].map((i) => ({ x: x + PAD + i * (width + PAD), y, width, height }));
}

/** The fullest notes that fit; if not even the shortest fit, the blocks left over are printed before the tables. */
function fittingNotes(matter: SubjectMatter, columns: readonly Area[]): Filled {
  const width = columns[0]?.width ?? COLUMN_WIDTH;
  let tried: Filled = { placed: [], rest: [] };
  for (const form of NOTE_FORMS) {
    tried = fillColumns(columnBlocks(matter, width, form), columns, BLOCK_GAP);
    if (tried.rest.length === 0) break;
  }
  return tried;
}
