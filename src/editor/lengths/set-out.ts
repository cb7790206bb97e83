import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import { endWall, isWidth } from '../../../geometry/edit/dimension-edit.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import { TOUCHING } from '../../../geometry/snap/room-faces.ts';
import { selectLevel, selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { drawnDimensions } from '../drawing.ts';
import { askLengths, type LengthStep, type LengthSubject, openLength, type SizePart } from './store.ts';
import { axisOf, gapsOf, sameSubject } from './subject.ts';

/** The lengths that position what was just placed, so that they are typed without another press. */

/** Lengths that are taped together; Enter steps through the first `asked` of them, and Tab through all. */
interface Run {
  readonly run: readonly LengthStep[];
  readonly asked: number;
}

export function askForThing(id: string): void {
  askLengths(thingRun(id));
}

export function askForOpening(id: string): void {
  askLengths(openingRun(id));
}

export function askForRoom(inside: XY): void {
  askLengths(roomRun(inside));
}

/** Opens a length that was pressed by finger, with those that are taped together with it, since a finger has no Tab key. */
export function openWithRun(subject: LengthSubject): void {
  const { run } = runOf(subject);
  const at = run.findIndex((step) => sameSubject(step(), subject));
  if (at < 0) openLength(subject, true);
  else openLength(subject, true, { run, at, asked: at + 1 });
}

function runOf(subject: LengthSubject): Run {
  if (subject.of !== 'face') return isOpening(subject.id) ? openingRun(subject.id) : thingRun(subject.id);
  const jamb = subject.dimension.ends.find((end) => end.kind === 'jamb');
  if (jamb) return openingRun(jamb.opening);
  const { from, to, outward } = subject.dimension;
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return roomRun([x - outward[0] * OFF_FACE, y - outward[1] * OFF_FACE]);
}

/** Distance in front of a face at which its room is looked up, mm. */
const OFF_FACE = 5;

const isOpening = (id: string): boolean =>
  selectLevel(useAppStore.getState()).openings.some((opening) => opening.id === id);

/** A thing: its distances from both walls; by Tab its own size and heights. */
function thingRun(id: string): Run {
  const size = (part: SizePart): LengthStep => {
    return () => (hasPart(id, part) ? { of: 'size', id, part } : null);
  };
  const gap = (axis: 0 | 1): LengthStep => {
    return () => ({ of: 'gap', id, axis });
  };
  // The distance to a wall that the thing touches comes last, since it mostly stays.
  const near = gapsOf(selectModel(useAppStore.getState()), id) ?? [];
  const against = near.filter((each) => each.gap <= TOUCHING).map(axisOf);
  const axes = ([0, 1] as const).filter((axis) => near.some((each) => axisOf(each) === axis));
  const order = [...axes.filter((axis) => !against.includes(axis)), ...against];
  const sizes = (['across', 'width', 'depth', 'top', 'bottom'] as const).map(size);
  return { run: [...order.map(gap), ...sizes], asked: order.length };
}

function hasPart(id: string, part: SizePart): boolean {
  const { fixtures, objects } = selectLevel(useAppStore.getState());
  const thing = [...fixtures, ...objects].find((each) => each.id === id);
  if (!thing || 'polygon' in thing.shape) return false;
  if (part === 'bottom' || part === 'top') return true;
  return (part === 'across') === 'circle' in thing.shape;
}

/** An opening: its distance from a corner, or else from the nearer opening; by Tab its width, sill and head. */
function openingRun(id: string): Run {
  const jambOf = ({ ends }: RunningDimension) => ends.some((end) => end.kind === 'jamb' && end.opening === id);
  const taped = () => {
    const beside = dimensions().filter((each) => jambOf(each) && !isWidth(each));
    return beside.sort((a, b) => rank(a) - rank(b))[0];
  };
  const offset = () => face(taped());
  const width: LengthStep = () => {
    const found = dimensions().find((each) => jambOf(each) && isWidth(each));
    // The jamb that was taped stays.
    const fromRight = taped()?.ends[1].kind === 'corner';
    return found ? { of: 'face', dimension: found, moves: fromRight ? 'from' : 'to' } : null;
  };
  const height = (part: SizePart): LengthStep => {
    return () => ({ of: 'size', id, part });
  };
  return { run: [offset, width, height('bottom'), height('top')], asked: 1 };
}

/** Sorts lengths from a corner before those from another opening, and then the shorter one first, which is the one that is taped. */
function rank({ ends, length }: RunningDimension): number {
  return length + (ends.some(({ kind }) => kind === 'corner') ? 0 : 1e7);
}

/** A room: its width on the page, then its depth. */
function roomRun(inside: XY): Run {
  const whole = (across: boolean): LengthStep => {
    return () => {
      const model = selectModel(useAppStore.getState());
      const room = model.rooms.find(({ floorRings }) => ringsContain(floorRings, inside));
      const own = dimensions().filter((each) => each.row === 'whole' && each.room === room?.key);
      return face(own.find(({ outward: [x, y] }) => Math.abs(y) > Math.abs(x) === across));
    };
  };
  return { run: [whole(true), whole(false)], asked: 2 };
}

/** Asks for the position of a wall that divides a room: its distance from the wall on its left, or above it. */
export function askForWall(ids: ReadonlySet<string>): void {
  const model = selectModel(useAppStore.getState());
  const parted = dimensions().filter((each) => each.row === 'whole' && ids.has(endWall(model, each, 'to')?.id ?? ''));
  const [taped] = parted;
  if (taped) askLengths({ run: [() => face(taped)], asked: 1 });
}

function dimensions(): readonly RunningDimension[] {
  return drawnDimensions(selectModel(useAppStore.getState()));
}

function face(dimension: RunningDimension | undefined): LengthSubject | null {
  return dimension ? { of: 'face', dimension } : null;
}
