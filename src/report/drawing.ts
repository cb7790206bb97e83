/** The level itself on the paper: ground, walls, things, dimensions, names, detectors. */
import { wholeDimensions } from '../../geometry/dimension/running-dimensions.ts';
import { levelExtent } from '../../geometry/level/level-extent.ts';
import { toneOf } from '../../geometry/messages/index.ts';
import { ringExtent } from '../../geometry/plane/body.ts';
import { visibleEdges } from '../../geometry/region/visible-edges.ts';
import { floorShapes, regionEdge, zoneShapes } from '../drawing/floor.ts';
import { overallDimensions } from '../drawing/labels/dimensions.ts';
import { layOutLabels } from '../drawing/labels/layout.ts';
import { symbolRadius } from '../drawing/labels/tags.ts';
import { thingShapes } from '../drawing/things.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import type { Area } from './paper.ts';
import { drawLabels, measuredLines, paperMedium, tagLabel, tagTexts } from './paper-labels.ts';
import { drawTracing } from './plan-tracing.ts';
import { type DrawingScale, fittingScale } from './scale.ts';
import { COLOR, DIMENSIONS_MM, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { svgShapes, verdictMark } from './svg-shapes.ts';
import { drawText } from './text.ts';
import { centeredView, toPaper, type View } from './view.ts';

export interface Drawing {
  readonly scale: DrawingScale;
  readonly view: View;
  readonly svg: string;
  /** Names that found no place on the drawing. */
  readonly leftOff: readonly string[];
}

/** Paper beside the lines of dimensions, mm. */
const PAST = 4;
const NONE: ReadonlySet<string> = new Set();

/** The largest round scale at which the level with its dimension lines fits; null for an empty level. */
export function levelScale(matter: SubjectMatter, area: Area): DrawingScale | null {
  const extent = levelExtent(matter.level);
  if (!extent) return null;
  const [width, height] = [Math.max(extent.maxX - extent.minX, 1), Math.max(extent.maxY - extent.minY, 1)];
  return fittingScale(width, height, buildingArea(matter, area), matter.plan.display.length);
}

/** The paper for the building without its lines of dimensions: two at the left and above, one at the right and below. */
function buildingArea({ model }: SubjectMatter, { x, y, width, height }: Area): Area {
  const { outside, step } = DIMENSIONS_MM;
  const near = outside + step + PAST;
  const both = near + (model.rooms.length > 0 ? outside : 0) + PAST;
  return { x: x + near, y: y + near, width: width - both, height: height - both };
}

/** Draws the level in the middle of an area of the paper, over the picture that it was drawn over where that is to show. */
export function drawLevel(matter: SubjectMatter, area: Area, showTracing = false): Drawing | null {
  const { level, model } = matter;
  const extent = levelExtent(level);
  const scale = levelScale(matter, area);
  if (!extent || !scale) return null;
  const view = centeredView(extent, buildingArea(matter, area), scale);
  const { names, signs, notes, leftOff } = drawWritten(matter, view, area);
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

/** Everything on the floor, from the ground up. */
export function drawGround({ region, zones }: SubjectMatter, view: View): string {
  const shapes = [...floorShapes(region), ...zoneShapes(region, zones, visibleEdges(zones)), regionEdge(region)];
  return svgShapes(view, shapes);
}

/** The labels, and the signs of the detectors between them. */
function drawWritten(matter: SubjectMatter, view: View, area: Area) {
  const { plan, model, region, zones, detectors } = matter;
  const { ratio } = view.scale;
  const medium = paperMedium(view, area);
  const wholes = wholeDimensions(model).filter(({ wallBehind }) => wallBehind !== null);
  const walls = [...model.pieces, ...model.joints].flatMap(({ body }) => body);
  const labels = layOutLabels(
    {
      plan,
      model,
      region,
      edges: visibleEdges(zones),
      dimensions: [[...(model.pieces.length > 0 ? overallDimensions(ringExtent(walls)) : []), ...wholes]],
      measured: measuredLines(matter),
      tagWidths: ({ id }) => {
        const found = detectors.find(({ detector }) => detector.id === id);
        return found ? [tagTexts(found.detector, found.report).width * ratio] : [];
      },
      reserved: [],
    },
    medium,
  );
  const tags = detectors.flatMap(({ detector, report }) => {
    const place = labels.tags.get(detector.id);
    return place ? [tagLabel(view, detector, report, place)] : [];
  });
  return {
    names: drawLabels(view, [...labels.dimensions, ...labels.zones, ...labels.things, ...labels.rooms]),
    signs: detectors.map(({ detector, report }) =>
      verdictMark(toneOf(report), ...toPaper(view, detector.at), symbolRadius(detector, medium) / ratio),
    ),
    notes: drawLabels(view, [...labels.measured, ...tags]),
    leftOff: labels.leftOff,
  };
}

/** What stands in place of a level on which nothing is drawn. */
export function drawEmptyLevel({ x, y, width, height }: Area): string {
  const style = { size: TYPE_MM.head, color: COLOR.inkSoft, anchor: 'middle' } as const;
  return drawText(x + width / 2, y + height / 2, 'Nothing is drawn on this level yet.', style);
}
