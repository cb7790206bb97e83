/** Walls and openings on paper, and the ground that they take. */
import type { LevelModel } from '../../geometry/level/types.ts';
import { type DoorSwing, doorSwing } from '../../geometry/snap/opening-symbol.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import { lineSlot, type Slot } from './placer.ts';
import { svgShapes } from './svg-shapes.ts';
import { onPaper, toPaper, type View } from './view.ts';

const NONE: ReadonlySet<string> = new Set();

export function drawWalls(model: LevelModel, view: View): string {
  return svgShapes(view, [...wallShapes(model, NONE), ...openingShapes(model, NONE)]);
}

/** The ground of the walls. */
export function wallSlots(model: LevelModel, view: View): readonly Slot[] {
  return model.pieces.map(({ from, to, thickness }) => {
    const [a, b] = [toPaper(view, from), toPaper(view, to)];
    const slot = lineSlot(a[0], a[1], b[0], b[1], onPaper(view, thickness));
    return { ...slot, width: slot.width + onPaper(view, thickness) };
  });
}

/** The ground that the doors sweep. */
export function swingSlots(model: LevelModel, view: View): readonly Slot[] {
  const doors = model.openings.filter(({ opening }) => opening.kind === 'door');
  return doors.flatMap(({ opening }) => doorSwing(model, opening.id) ?? []).map((swing) => swingSlot(view, swing));
}

function swingSlot(view: View, { hinge, open, width, start }: DoorSwing): Slot {
  const [h, o] = [toPaper(view, hinge), toPaper(view, open)];
  const side = onPaper(view, width);
  const [dx, dy] = [(Math.cos(start) * side) / 2, (Math.sin(start) * side) / 2];
  const turn = (start * 180) / Math.PI;
  return { x: (h[0] + o[0]) / 2 + dx, y: (h[1] + o[1]) / 2 + dy, width: side, height: side, turn };
}
