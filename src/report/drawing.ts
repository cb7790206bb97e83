/** The level itself on the paper: ground, walls, things, dimensions, names, detectors. */
import { wholeDimensions } from '../../geometry/dimension/running-dimensions.ts';
import { levelExtent } from '../../geometry/level/level-extent.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { toneOf } from '../../geometry/messages/index.ts';
import { type Extent, ringExtent } from '../../geometry/plane/body.ts';
import { visibleEdges } from '../../geometry/region/visible-edges.ts';
import { floorShapes, regionEdge, zoneShapes } from '../drawing/floor.ts';
import { overallDimensions } from '../drawing/labels/dimensions.ts';
import { layOutLabels } from '../drawing/labels/layout.ts';
import { symbolRadius } from '../drawing/labels/tags.ts';
import { thingShapes } from '../drawing/things.ts';
import { verdictSign } from '../drawing/verdict-sign.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import { measuredLines } from './measured-lines.ts';
import type { Area } from './paper.ts';
import { drawLabels, paperMedium, tagLabel, tagWidth } from './paper-labels.ts';
import { drawTracing } from './plan-tracing.ts';
import { type DrawingScale, fittingScale } from './scale.ts';
import { COLOR, DIMENSIONS_MM, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { ON_PAPER, svgShapes } from './svg-shapes.ts';
import { drawText } from './text.ts';
import { toPaper, type View } from './view.ts';

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
  const frame = framed(matter, area);
  return frame && fittingScale(frame.width, frame.height, frame.room, matter.plan.display.length);
}

/** Draws the level in the middle of an area of the paper, over the picture that it was drawn over where that is to show. */
export function drawLevel(matter: SubjectMatter, area: Area, showTracing = false): Drawing | null {
  const frame = framed(matter, area);
  const scale = levelScale(matter, area);
  if (!frame || !scale) return null;
  const { level, model, detectors } = matter;
  const { extent, margins, room } = frame;
  const view: View = {
    scale,
    originX: area.x + margins.near + (room.width - frame.width / scale.ratio) / 2 - extent.minX / scale.ratio,
    originY: area.y + margins.near + (room.height - frame.height / scale.ratio) / 2 - extent.minY / scale.ratio,
  };
  const { drawn, leftOff } = drawnLabels(matter, view, area);
  const medium = paperMedium(view, area);
  const signs = detectors.flatMap(({ detector, report }) =>
    verdictSign(toneOf(report), toPaper(view, detector.at), symbolRadius(detector, medium)),
  );
  const svg = [
    drawGround(matter, view),
    showTracing && level.tracing ? drawTracing(level.tracing, view, area) : '',
    svgShapes(view, [...thingShapes(level, NONE), ...wallShapes(model, NONE), ...openingShapes(model, NONE)]),
    drawn.names,
    svgShapes(ON_PAPER, signs),
    drawn.notes,
  ];
  return { scale, view, svg: svg.join(''), leftOff };
}

/** Everything on the floor, from the ground up. */
export function drawGround({ region, zones }: SubjectMatter, view: View): string {
  const shapes = [...floorShapes(region), ...zoneShapes(region, zones, visibleEdges(zones)), regionEdge(region)];
  return svgShapes(view, shapes);
}

function drawnLabels(matter: SubjectMatter, view: View, area: Area) {
  const { plan, model, region, zones, detectors } = matter;
  const medium = paperMedium(view, area);
  const reports = new Map(detectors.map(({ detector, report }) => [detector.id, report]));
  const walls = wallExtent(model);
  const wholes = wholeDimensions(model).filter(({ wallBehind }) => wallBehind !== null);
  const labels = layOutLabels(
    {
      plan,
      model,
      region,
      edges: visibleEdges(zones),
      dimensions: [[...(walls ? overallDimensions(walls) : []), ...wholes]],
      measured: measuredLines(matter, medium),
      tagWidths: (detector) => {
        const report = reports.get(detector.id);
        return report ? [tagWidth(detector, report)] : [];
      },
      reserved: [],
    },
    medium,
  );
  const tags = detectors.flatMap(({ detector, report }) => {
    const place = labels.tags.get(detector.id);
    return place ? [tagLabel(detector, report, place)] : [];
  });
  const { measured, rooms, things, zones: rules, dimensions, leftOff } = labels;
  return {
    drawn: {
      names: drawLabels(view, [...dimensions, ...rules, ...things, ...rooms]),
      notes: drawLabels(view, [...measured, ...tags]),
    },
    leftOff,
  };
}

/** What stands in place of a level on which nothing is drawn. */
export function drawEmptyLevel({ x, y, width, height }: Area): string {
  const style = { size: TYPE_MM.head, color: COLOR.inkSoft, anchor: 'middle' } as const;
  return drawText(x + width / 2, y + height / 2, 'Nothing is drawn on this level yet.', style);
}

interface Framed {
  readonly extent: Extent;
  /** Paper for lines of dimensions: two at the left and above, one at the right and below. */
  readonly margins: { readonly near: number; readonly far: number };
  readonly width: number;
  readonly height: number;
  /** Paper for the building without its dimension lines. */
  readonly room: { readonly width: number; readonly height: number };
}

function framed({ level, model }: SubjectMatter, area: Area): Framed | null {
  const extent = levelExtent(level);
  if (!extent) return null;
  const { outside, step } = DIMENSIONS_MM;
  const margins = {
    near: outside + step + PAST,
    far: model.rooms.length > 0 ? outside + PAST : PAST,
  };
  return {
    extent,
    margins,
    width: Math.max(extent.maxX - extent.minX, 1),
    height: Math.max(extent.maxY - extent.minY, 1),
    room: { width: area.width - margins.near - margins.far, height: area.height - margins.near - margins.far },
  };
}

/** Of the walls with their thickness; null without walls. */
function wallExtent({ pieces, joints }: LevelModel): Extent | null {
  return pieces.length > 0 ? ringExtent([...pieces, ...joints].flatMap(({ body }) => body)) : null;
}
