/** The level itself on the paper: ground, walls, things, dimensions, names, detectors. */

import { levelExtent } from '../../geometry/level/level-extent.ts';
import { type Extent, ringExtent } from '../../geometry/plane/body.ts';
import type { Area } from './paper.ts';
import { createPlacer } from './placer.ts';
import { detectorSlots, drawDetectors, placeDetectorNotes } from './plan-detectors.ts';
import { type Chains, dimensionChains, dimensionMargins, planDimensions } from './plan-dimensions.ts';
import { drawGround, edgeSlots } from './plan-ground.ts';
import { placeRoomNames } from './plan-room-names.ts';
import { placeThingNames } from './plan-thing-names.ts';
import { drawThings, thingSlot } from './plan-things.ts';
import { drawTracing } from './plan-tracing.ts';
import { drawWalls, swingSlots, wallSlots } from './plan-walls.ts';
import { placeZoneLabels } from './plan-zone-labels.ts';
import { type DrawingScale, fittingScale } from './scale.ts';
import { COLOUR, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { drawText } from './text.ts';
import type { View } from './view.ts';

export interface Drawing {
  readonly scale: DrawingScale;
  readonly view: View;
  readonly svg: string;
  /** Names that found no place on the drawing. */
  readonly leftOff: readonly string[];
}

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
  const { extent, margins, room } = frame;
  const view: View = {
    scale,
    originX: area.x + margins.left + (room.width - frame.width / scale.ratio) / 2 - extent.minX / scale.ratio,
    originY: area.y + margins.top + (room.height - frame.height / scale.ratio) / 2 - extent.minY / scale.ratio,
  };
  const placer = createPlacer(area);
  const slots = new Map(
    [...matter.level.fixtures, ...matter.level.objects].map(({ id, shape }) => [id, thingSlot(view, shape)] as const),
  );
  const dimensions = frame.walls ? planDimensions(view, frame.chains, frame.walls, matter.plan.display.length) : [];
  for (const slot of detectorSlots(matter, view)) placer.take(slot);
  for (const slot of wallSlots(matter.model, view)) placer.take(slot, 'wall');
  for (const slot of [...slots.values(), ...swingSlots(matter.model, view)]) placer.take(slot, 'thing');
  for (const { words, lines } of dimensions) {
    placer.take(words);
    for (const slot of lines) placer.take(slot, 'line');
  }
  for (const slot of edgeSlots(matter, view)) placer.take(slot, 'edge');
  const notes = placeDetectorNotes(matter, view, placer);
  const rooms = placeRoomNames(matter, view, placer);
  const things = placeThingNames(matter, view, placer, slots);
  const zoneLabels = placeZoneLabels(matter, view, placer);
  const svg = [
    drawGround(matter, view),
    showTracing && matter.level.tracing ? drawTracing(matter.level.tracing, view, area) : '',
    drawThings(matter.level, view),
    drawWalls(matter.model, view),
    dimensions.map(({ drawn }) => drawn).join(''),
    zoneLabels,
    things.drawn,
    rooms.drawn,
    drawDetectors(matter, view),
    notes,
  ];
  return { scale, view, svg: svg.join(''), leftOff: [...rooms.leftOff, ...things.leftOff] };
}

/** What stands in place of a level on which nothing is drawn. */
export function drawEmptyLevel({ x, y, width, height }: Area): string {
  const style = { size: TYPE_MM.head, colour: COLOUR.inkSoft, anchor: 'middle' } as const;
  return drawText(x + width / 2, y + height / 2, 'Nothing is drawn on this level yet.', style);
}

interface Framed {
  readonly extent: Extent;
  /** Of the walls as built; null without walls. */
  readonly walls: Extent | null;
  readonly chains: Chains;
  readonly margins: ReturnType<typeof dimensionMargins>;
  readonly width: number;
  readonly height: number;
  /** Paper for the building without its dimension lines. */
  readonly room: { readonly width: number; readonly height: number };
}

function framed({ level, model }: SubjectMatter, area: Area): Framed | null {
  const extent = levelExtent(level);
  if (!extent) return null;
  const chains = dimensionChains(model);
  const margins = dimensionMargins(chains);
  return {
    extent,
    walls: model.pieces.length > 0 ? ringExtent([...model.pieces, ...model.joints].flatMap(({ body }) => body)) : null,
    chains,
    margins,
    width: Math.max(extent.maxX - extent.minX, 1),
    height: Math.max(extent.maxY - extent.minY, 1),
    room: {
      width: area.width - margins.left - margins.right,
      height: area.height - margins.top - margins.bottom,
    },
  };
}
