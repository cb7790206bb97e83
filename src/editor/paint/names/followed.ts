import type { RunningDimension } from '../../../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../../../geometry/level/types.ts';
import type { Plan, XY } from '../../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../../geometry/plane/body.ts';
import { memoize } from '../../../../geometry/plane/memoize.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../../../geometry/region/types.ts';
import type { DimensionLabel, Label, RoomLabel, ThingLabel, ZoneLabel } from '../../../drawing/labels/label.ts';
import { roomWords } from '../../../drawing/words.ts';
import type { SpotMark } from '../../../state/shown.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** The inputs of the sheet's labels. The same objects give the same labels. */
export interface Named {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  readonly selection: readonly string[];
  /** Why the level is not the one to test; empty when it is. */
  readonly bar: string;
  /** Places that the panels mark; names do not cover them. */
  readonly marked: readonly SpotMark[];
  /** Whether a drag changes the plan: labels then keep their places, and are laid out again when it ends. */
  readonly dragged: boolean;
  /** The stage, if the whole level is in view: nothing is written beyond it. Null if the sheet was panned or zoomed. */
  readonly stage: SizePx | null;
}

export type SheetLabel = RoomLabel | ThingLabel | ZoneLabel | DimensionLabel;

/**
 * Returns a label during a drag that changes the plan: the same object if nothing in it has changed, one that moves with its item, or null
 * if it is no longer true. Labels are laid out again when the drag ends.
 */
export function followedLabel(label: SheetLabel, before: Named, now: Named): SheetLabel | null {
  if ('zone' in label) return zonesIn(now.region).has(label.zone) ? label : null;
  if ('dimension' in label) return isStill(label.dimension, before.model, now.model) ? label : null;
  return 'thing' in label ? followedThing(label, now) : followedRoom(label, before, now);
}

const zonesIn = memoize(({ zones }: LevelRegion): ReadonlySet<Zone> => new Set(zones));

function followedThing(label: ThingLabel, { model }: Named): ThingLabel | null {
  const { fixtures, objects } = model.level;
  const { id, shape } = label.thing;
  const thing = fixtures.find((each) => each.id === id) ?? objects.find((each) => each.id === id);
  if (!thing || thing === label.thing) return thing ? label : null;
  return moved({ ...label, thing }, shapeMiddle(shape), shapeMiddle(thing.shape));
}

/** Moves with its label point and shows the present area. */
function followedRoom(label: RoomLabel, before: Named, now: Named): RoomLabel | null {
  const region = now.region.rooms.find(({ room }) => room.key === label.region.room.key);
  if (!region || region === label.region) return region ? label : null;
  const at = ({ room }: RoomRegion) => room.label?.at ?? room.labelPoint;
  const [was, is] = [roomWords(label.region, before.plan), roomWords(region, now.plan)];
  const texts = label.texts.map((each) => (each.text === was.area ? { ...each, text: is.area } : each));
  return moved({ ...label, texts, region }, at(label.region), at(region));
}

/** Returns the label moved from one point to another; null if it has shapes, such as a leader, which would no longer fit. */
function moved<Moved extends Label>(label: Moved, from: XY, to: XY): Moved | null {
  if (label.shapes.length > 0) return null;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return {
    ...label,
    texts: label.texts.map((text) => ({ ...text, at: [text.at[0] + dx, text.at[1] + dy] })),
    slots: label.slots.map((slot) => ({ ...slot, x: slot.x + dx, y: slot.y + dy })),
  };
}

/**
 * Whether a length is unchanged: its room and the openings at its ends are the same objects. It runs for every figure in every frame of a
 * drag, so nothing is measured.
 */
function isStill({ room, ends }: RunningDimension, before: LevelModel, now: LevelModel): boolean {
  const [was, is] = [partsOf(before), partsOf(now)];
  const same = (key: string) => was.get(key) !== undefined && was.get(key) === is.get(key);
  return same(`room ${room}`) && ends.every((end) => end.kind === 'corner' || same(`opening ${end.opening}`));
}

const partsOf = memoize(({ rooms, level }: LevelModel): ReadonlyMap<string, object> => {
  const openings = level.openings.map((opening) => [`opening ${opening.id}`, opening] as const);
  return new Map<string, object>([...rooms.map((room) => [`room ${room.key}`, room] as const), ...openings]);
});
