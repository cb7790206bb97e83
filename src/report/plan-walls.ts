/** Walls filled, openings cut through them with their swing or sash. */
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Opening, XY } from '../../geometry/plan/model.ts';
import { along } from '../../geometry/plane/point.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import { type DoorSwing, doorSwing, type JambCorners, jambCorners } from '../../geometry/snap/opening-symbol.ts';
import { lineSlot, type Slot } from './placer.ts';
import { COLOUR, LINE_MM } from './style.ts';
import { element, group, line } from './svg.ts';
import { arcRingsPath, onPaper, ringsPath, toPaper, type View } from './view.ts';

const STROKE = { stroke: COLOUR.fixture, 'stroke-width': LINE_MM.fixture };

export function drawWalls(model: LevelModel, view: View): string {
  const walls = ringsPath(
    view,
    [...model.pieces, ...model.joints].map(({ body }) => body),
  );
  return group(
    {},
    element('path', {
      d: walls,
      fill: COLOUR.poche,
      stroke: COLOUR.poche,
      'stroke-width': 0.08,
      'stroke-linejoin': 'round',
    }),
    ...model.openings.map(({ opening }) => drawOpening(model, view, opening)),
  );
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
  return model.openings.flatMap(({ opening }) => swingOf(model, opening) ?? []).map((swing) => swingSlot(view, swing));
}

function swingOf(model: LevelModel, { id, kind }: Opening): DoorSwing | null {
  return kind === 'door' ? doorSwing(model, id) : null;
}

function drawOpening(model: LevelModel, view: View, opening: Opening): string {
  const corners = jambCorners(model.level, opening);
  if (!corners) return '';
  const { near, far } = corners;
  // A trifle past the faces, so that no dark hairline is left of the wall.
  const body: Ring = [near[0], far[0], far[1], near[1]];
  const cut = element('path', {
    d: ringsPath(view, [body]),
    fill: COLOUR.paper,
    stroke: COLOUR.paper,
    'stroke-width': 0.12,
  });
  const jambs = between(view, near[0], near[1], STROKE) + between(view, far[0], far[1], STROKE);
  switch (opening.kind) {
    case 'window':
      return group({}, cut, jambs, ...[0, 0.42, 0.58, 1].map((share) => lengthwise(view, corners, share, STROKE)));
    case 'passage':
      return group(
        {},
        cut,
        jambs,
        ...[0, 1].map((share) => lengthwise(view, corners, share, { ...STROKE, 'stroke-dasharray': '1 0.8' })),
      );
    case 'door': {
      const swing = swingOf(model, opening);
      return group({}, cut, jambs, swing ? drawSwing(view, swing) : '');
    }
  }
}

/** From jamb to jamb, at a share of the way through the wall. */
function lengthwise(
  view: View,
  { near, far }: JambCorners,
  share: number,
  style: Record<string, string | number>,
): string {
  return between(view, along(near[0], near[1], share), along(far[0], far[1], share), style);
}

function drawSwing(view: View, { hinge, open, width, start, sweep }: DoorSwing): string {
  const arc = arcRingsPath(view, [[{ kind: 'arc', center: hinge, radius: width, start, sweep }]]);
  return (
    between(view, hinge, open, { ...STROKE, 'stroke-width': LINE_MM.fixture * 1.6 }) +
    element('path', { d: arc.replace(/Z$/, ''), fill: 'none', stroke: COLOUR.fixture, 'stroke-width': LINE_MM.object })
  );
}

function swingSlot(view: View, { hinge, open, width, start }: DoorSwing): Slot {
  const [h, o] = [toPaper(view, hinge), toPaper(view, open)];
  const side = onPaper(view, width);
  const [dx, dy] = [(Math.cos(start) * side) / 2, (Math.sin(start) * side) / 2];
  const turn = (start * 180) / Math.PI;
  return { x: (h[0] + o[0]) / 2 + dx, y: (h[1] + o[1]) / 2 + dy, width: side, height: side, turn };
}

function between(view: View, a: XY, b: XY, style: Record<string, string | number>): string {
  const [p, q] = [toPaper(view, a), toPaper(view, b)];
  return line(p[0], p[1], q[0], q[1], style);
}
