import type { RunningDimension } from '../../../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../../../geometry/level/types.ts';
import type { Fixture, Plan, PlanObject, XY } from '../../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../../geometry/plane/body.ts';
import { memoize } from '../../../../geometry/plane/memoize.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../../../geometry/region/types.ts';
import type { Label } from '../../../drawing/labels/medium.ts';
import { slotCorners } from '../../../drawing/labels/placer.ts';
import { roomWords } from '../../../drawing/words.ts';
import type { SpotMark } from '../../../state/shown.ts';
import { intersects, type RectPx } from '../../stage/rect.ts';
import { paintDrawn } from '../canvas.ts';
import { type Pen, px } from '../pen.ts';

/** The inputs of the sheet's labels. The same objects give the same labels. */
export interface Named {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  readonly selection: readonly string[];
  /** Why the level is not the one to test; empty when it is. */
  readonly bar: string;
  /** Places that the panels mark: names keep off them. */
  readonly marked: readonly SpotMark[];
  /** Whether a drag changes the plan: labels then stay where they are, and are laid out again when it ends. */
  readonly dragged: boolean;
}

/** A label of the sheet with what it is of and what it takes up. All px are from the plan's origin, at the scale that it was laid out for. */
export interface Mark {
  readonly label: Label;
  readonly box: RectPx;
  readonly of:
    | { readonly room: RoomRegion }
    | { readonly thing: Fixture | PlanObject }
    | { readonly zone: Zone }
    | { readonly dimension: RunningDimension };
}

/** Halos and half the width of a line reach so far beyond the box, px. */
const HALO_PX = 4;

export function boxOf({ slots, shapes }: Label): RectPx {
  const corners: XY[] = slots.flatMap((slot) => [...slotCorners(slot)]);
  for (const { extent } of shapes.flatMap(({ parts }) => parts)) {
    corners.push([extent.minX, extent.minY], [extent.maxX, extent.maxY]);
  }
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return {
    left: Math.min(...xs) - HALO_PX,
    top: Math.min(...ys) - HALO_PX,
    right: Math.max(...xs) + HALO_PX,
    bottom: Math.max(...ys) + HALO_PX,
  };
}

/** Paints the marks that meet the pen's area. The pen's origin is the plan's; its area is the screen's. */
export function paintMarks(pen: Pen, marks: readonly Mark[], origin: XY): void {
  const { left, top, right, bottom } = pen.area;
  const area = { left: left - origin[0], top: top - origin[1], right: right - origin[0], bottom: bottom - origin[1] };
  for (const { label, box } of marks) {
    if (intersects(box, area)) paintDrawn(pen, label);
  }
}

/**
 * Returns a mark during a drag that changes the plan: the same one where nothing in it has changed, one that moves along, or null where
 * it no longer holds. Labels are laid out again when the drag ends.
 */
export function followedMark(mark: Mark, pen: Pen, before: Named, now: Named): Mark | null {
  const { of } = mark;
  if ('zone' in of) return zonesIn(now.region).has(of.zone) ? mark : null;
  if ('dimension' in of) return isStill(of.dimension, before.model, now.model) ? mark : null;
  return 'thing' in of ? followedThing(mark, of.thing, pen, now) : followedRoom(mark, of.room, pen, before, now);
}

const zonesIn = memoize(({ zones }: LevelRegion): ReadonlySet<Zone> => new Set(zones));

function followedThing(mark: Mark, thing: Fixture | PlanObject, pen: Pen, { model }: Named): Mark | null {
  const { fixtures, objects } = model.level;
  const now = fixtures.find(({ id }) => id === thing.id) ?? objects.find(({ id }) => id === thing.id);
  if (now === thing) return mark;
  return now ? moved(mark, pen, shapeMiddle(thing.shape), shapeMiddle(now.shape), { thing: now }) : null;
}

/** Returns the mark of a selected room. */
export const accentedMark = memoize((mark: Mark): Mark => {
  const texts = mark.label.texts.map((text) =>
    text.style.color === 'ink' ? { ...text, style: { ...text.style, color: 'accent' as const } } : text,
  );
  return { ...mark, label: { ...mark.label, texts } };
});

/** Moves along with its label point, with the area as it is now. */
function followedRoom(mark: Mark, region: RoomRegion, pen: Pen, before: Named, now: Named): Mark | null {
  const room = now.region.rooms.find((each) => each.room.key === region.room.key);
  if (!room) return null;
  if (room === region) return mark;
  const at = ({ room: { label, labelPoint } }: RoomRegion) => label?.at ?? labelPoint;
  const along = moved(mark, pen, at(region), at(room), { room });
  const [was, is] = [roomWords(region, before.plan), roomWords(room, now.plan)];
  const texts = along?.label.texts.map((each) => (each.text === was.area ? { ...each, text: is.area } : each));
  return along && texts ? { ...along, label: { ...along.label, texts } } : null;
}

/** Returns the mark moved by as much; null where it has a leader, which would point beside the thing. */
function moved(mark: Mark, pen: Pen, from: XY, to: XY, of: Mark['of']): Mark | null {
  const { texts, slots, shapes } = mark.label;
  if (shapes.length > 0) return null;
  const [[x, y], [nx, ny]] = [px(pen, from), px(pen, to)];
  const [dx, dy] = [nx - x, ny - y];
  const label: Label = {
    shapes,
    texts: texts.map((text) => ({ ...text, at: [text.at[0] + dx, text.at[1] + dy] })),
    slots: slots.map((slot) => ({ ...slot, x: slot.x + dx, y: slot.y + dy })),
  };
  return { label, box: boxOf(label), of };
}

/**
 * Whether a length is what it was: its room and the openings that it ends at are the same objects. Asked of every figure in every frame
 * of a drag, so nothing is measured.
 */
function isStill({ room, ends }: RunningDimension, before: LevelModel, now: LevelModel): boolean {
  const [was, is] = [partsOf(before), partsOf(now)];
  const same = (key: string) => was.get(key) !== undefined && was.get(key) === is.get(key);
  return same(`room ${room}`) && ends.every((end) => end.kind === 'corner' || same(`opening ${end.opening}`));
}

const partsOf = memoize(
  ({ rooms, level }: LevelModel): ReadonlyMap<string, object> =>
    new Map<string, object>([
      ...rooms.map((room) => [`room ${room.key}`, room] as const),
      ...level.openings.map((opening) => [`opening ${opening.id}`, opening] as const),
    ]),
);
