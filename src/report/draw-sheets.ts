/**
 * The marked-up plan of one level as SVG documents, one a sheet: first the drawing with its notes, then the tables.
 * Pure: the same input gives the same text. Nothing is cut off: what does not fit beside the drawing goes to the tables.
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
  /** As it shall be read on the sheet: this code has no clock. */
  readonly date: string;
  /** What the white is drawn for; left out, the level's first detector, or a common canister on a table. */
  readonly probe?: Probe;
  /** Whether the picture that the level was drawn over shows faintly; left out, it does not. */
  readonly showTracing?: boolean;
  /** What the second computation says of each detector, by id; left out, the sheet says that there was one only. */
  readonly computed?: ReadonlyMap<string, Computed>;
  /** Ms; an event that is recorded for later has not happened. Left out, whatever is recorded has. */
  readonly now?: Ms;
}

/** The notes stand in one column at the right, or in three under the drawing where that shows a long house larger. */
interface Arrangement {
  readonly drawing: Area;
  readonly columns: readonly Area[];
  /** The line between drawing and notes. */
  readonly parting: readonly [x1: number, y1: number, x2: number, y2: number];
}

const COLUMN_WIDTH = 70;
const PAD = 4;
const BLOCK_GAP = 3;

/** All sheets of a level in order. The plan must have the level. */
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

/** The sheet with the drawing alone, for a report whose pages are not counted yet. */
export interface PlanPage {
  readonly levelName: string;
  /** What is to be said of the drawing, names without room on it too: no sheets follow on which it stands. */
  readonly remarks: readonly string[];
  readonly draw: (sheet: number, sheets: number) => string;
}

/** The plan must have the level. */
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

/** Returns the orientation in which the level is drawn larger; landscape where both show it alike. The plan must have the level. */
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

/** One sheet; the first, with the drawing, when `sheet` is left out. The sheet must exist. */
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

/** The arrangement that shows the level largest; beside the drawing when both do. */
function arrange(matter: SubjectMatter, area: Area): Arrangement {
  const side = besideDrawing(area);
  return NOTE_FORMS.map((form) => underDrawing(matter, area, form)).reduce(
    (best, each) => (isLarger(matter, each, best) ? each : best),
    side,
  );
}

/** A drawing that is less than so much larger is not worth another arrangement. */
const WORTH = 1.1;

function isLarger(matter: SubjectMatter, one: Arrangement, other: Arrangement): boolean {
  return ratioIn(matter, one) * WORTH < ratioIn(matter, other);
}

/** How much smaller than the house the drawing is; 1 where nothing is drawn. */
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

/** The band is as high as its notes need, up to half of the sheet. */
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

/** The fullest notes that fit; where not even the least do, the others go to the tables. */
function fittingNotes(matter: SubjectMatter, columns: readonly Area[]): Filled {
  const width = columns[0]?.width ?? COLUMN_WIDTH;
  let tried: Filled = { placed: [], rest: [] };
  for (const form of NOTE_FORMS) {
    tried = fillColumns(columnBlocks(matter, width, form), columns, BLOCK_GAP);
    if (tried.rest.length === 0) break;
  }
  return tried;
}
