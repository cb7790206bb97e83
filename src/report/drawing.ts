/** The drawing of a level on paper: ground, walls, things, dimensions, names, detectors. */
import { runningDimensions, wholeDimensions } from '../../geometry/dimension/running-dimensions.ts';
import { levelExtent } from '../../geometry/level/level-extent.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { toneOf } from '../../geometry/messages/index.ts';
import { ringExtent } from '../../geometry/plane/extent.ts';
import { visibleEdges } from '../../geometry/region/visible-edges.ts';
import { floorShapes, regionEdge, zoneShapes } from '../drawing/floor.ts';
import { overallDimensions } from '../drawing/labels/dimensions.ts';
import { layOutLabels } from '../drawing/labels/layout.ts';
import { paperLines } from '../drawing/labels/paper-lines.ts';
import { symbolRadius } from '../drawing/labels/tags.ts';
import { thingShapes } from '../drawing/things.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import type { Area } from './paper.ts';
import { drawLabels, measuredLines, paperMedium, tagLabel, tagTexts, tapedGaps } from './paper-labels.ts';
import { drawTracing } from './plan-tracing.ts';
import { type DrawingScale, fittingScale } from './scale.ts';
import { COLOR, DIMENSIONS_MM, SMALL_RATIO, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { svgShapes, verdictMark } from './svg-shapes.ts';
import { drawText } from './text.ts';
import { centeredView, toPaper, type View } from './view.ts';

export interface Drawing {
  readonly scale: DrawingScale;
  readonly view: View;
  readonly svg: string;
  /** Names without room on the drawing. */
  readonly leftOff: readonly string[];
}

/** Free paper outside the dimension lines, mm. */
const PAST = 4;
const NONE: ReadonlySet<string> = new Set();

interface Fitted {
  readonly scale: DrawingScale;
  /** Area for the building without its dimension lines. */
  readonly place: Area;
  /** Whether the dimension strings that locate the openings are drawn. */
  readonly strings: boolean;
}

/** Returns the largest round scale at which the level with its dimension lines fits; null for an empty level. */
export function levelScale(matter: SubjectMatter, area: Area): DrawingScale | null {
  return fittedLevel(matter, area)?.scale ?? null;
}

/** A small drawing has no dimension strings of openings: most of their figures would have no room. */
function fittedLevel(matter: SubjectMatter, area: Area): Fitted | null {
  const extent = levelExtent(matter.level);
  if (!extent) return null;
  const [width, height] = [Math.max(extent.maxX - extent.minX, 1), Math.max(extent.maxY - extent.minY, 1)];
  const fitted = (strings: boolean): Fitted => {
    const place = buildingArea(matter, area, strings);
    return { scale: fittingScale(width, height, place, matter.plan.display.length), place, strings };
  };
  const whole = fitted(matter.model.openings.length > 0);
  return whole.scale.ratio > SMALL_RATIO ? fitted(false) : whole;
}

/**
 * The area for the building without its dimension lines. Above and at the left there are, from the building outward, the strings of
 * openings, the rooms and the whole building; below and at the right there is no line of the whole building.
 */
function buildingArea({ model }: SubjectMatter, { x, y, width, height }: Area, strings: boolean): Area {
  const { outside, step } = DIMENSIONS_MM;
  const row = outside + (strings ? step : 0);
  const near = row + step + PAST;
  const both = near + (model.rooms.length > 0 ? row : 0) + PAST;
  return { x: x + near, y: y + near, width: width - both, height: height - both };
}

/** Returns the level drawn in the middle of an area of the paper, over the picture it was traced from if `showTracing`; null if empty. */
export function drawLevel(matter: SubjectMatter, area: Area, showTracing = false): Drawing | null {
  const { level, model } = matter;
  const extent = levelExtent(level);
  const fitted = fittedLevel(matter, area);
  if (!extent || !fitted) return null;
  const { scale, place, strings } = fitted;
  const view = centeredView(extent, place, scale);
  const { names, signs, notes, leftOff } = drawWritten(matter, view, area, strings);
  const svg = [
    drawGround(matter, view),
    showTracing && level.tracing ? drawTracing(level.tracing, view, area) : '',
    svgShapes(view, [...thingShapes(level, NONE), ...wallShapes(model, NONE), ...openingShapes(model, NONE)]),
    names,
    ...signs,
    notes,
  ];
  return { scale, view, svg: svg.join(''), leftOff };
}

/** Returns the floors, zones and the edge of the allowed area, in the order in which they are drawn. */
export function drawGround({ region, zones }: SubjectMatter, view: View): string {
  const shapes = [...floorShapes(region), ...zoneShapes(region, zones, visibleEdges(zones)), regionEdge(region)];
  return svgShapes(view, shapes);
}

/** The labels and the symbols of the detectors. */
function drawWritten(matter: SubjectMatter, view: View, area: Area, strings: boolean) {
  const { plan, model, region, zones, detectors } = matter;
  const { ratio } = view.scale;
  const medium = paperMedium(view, area);
  const { wholes, parts } = dimensionsOf(model, strings);
  const walls = [...model.pieces, ...model.joints].flatMap(({ body }) => body);
  const measured = measuredLines(matter);
  const labels = layOutLabels(
    {
      plan,
      model,
      region,
      edges: visibleEdges(zones),
      dimensions: [
        [
          ...(model.pieces.length > 0
            ? overallDimensions(ringExtent(walls), strings ? DIMENSIONS_MM.step * ratio : 0)
            : []),
          ...wholes,
        ],
        parts,
      ],
      lines: paperLines(measured, tapedGaps(matter, measured)),
      tagWidths: ({ id }) => {
        const found = detectors.find(({ detector }) => detector.id === id);
        return found ? [tagTexts(found.detector, found.report).width * ratio] : [];
      },
      reserved: [],
      marks: [],
    },
    medium,
  );
  const tags = detectors.flatMap(({ detector, report }) => {
    const place = labels.tags.get(detector.id);
    return place ? [tagLabel(view, detector, report, place)] : [];
  });
  return {
    names: drawLabels(view, [
      ...labels.dimensions,
      ...labels.taped,
      ...labels.zones,
      ...labels.things,
      ...labels.rooms,
    ]),
    signs: detectors.map(({ detector, report }) =>
      verdictMark(toneOf(report), ...toPaper(view, detector.at), symbolRadius(detector, medium) / ratio),
    ),
    notes: drawLabels(view, [...labels.measured, ...tags]),
    leftOff: labels.leftOff,
  };
}

/** The dimensions along outside walls, and the dimension strings of their openings. */
function dimensionsOf(model: LevelModel, strings: boolean) {
  const all = (strings ? runningDimensions(model) : wholeDimensions(model)).filter(
    ({ wallBehind }) => wallBehind !== null,
  );
  return { wholes: all.filter(({ row }) => row === 'whole'), parts: all.filter(({ row }) => row === 'string') };
}

/** Returns the text printed for a level on which nothing is drawn. */
export function drawEmptyLevel({ x, y, width, height }: Area): string {
  const style = { size: TYPE_MM.head, color: COLOR.inkSoft, anchor: 'middle' } as const;
  return drawText(x + width / 2, y + height / 2, 'Nothing is drawn on this level yet.', style);
}
