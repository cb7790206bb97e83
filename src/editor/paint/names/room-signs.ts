import type { XY } from '../../../../geometry/plan/model.ts';
import { ringExtent } from '../../../../geometry/plane/body.ts';
import { ringsContain } from '../../../../geometry/plane/ring.ts';
import type { RoomRegion } from '../../../../geometry/region/types.ts';
import { toPlan } from '../../../state/viewport.ts';
import { type Pen, px } from '../pen.ts';
import { drawText, FINE, READ, SMALL, type TextStyle, textWidth } from '../text.ts';
import { boxAbout, type Mark } from './mark.ts';
import type { Places } from './places.ts';
import type { Named } from './sheet-names.ts';

/** The lines of a room's sign: its name large, then its area, then why it is out where it is. */
export interface RoomSign {
  readonly room: RoomRegion;
  readonly name: string;
  readonly lines: readonly string[];
  /** Where its name was put. */
  readonly at: XY;
  readonly chosen: boolean;
}

/** Lines closer than this run into one another. */
const LINE_HEIGHT = 1.3;
/** Places in a room are tried on a grid of at most so many steps each way, and not finer than so many px. */
const STEPS = 12;
const LEAST_STEP_PX = 14;

interface Row {
  readonly text: string;
  readonly style: TextStyle;
}

/**
 * Each room's sign at its name's place, or as near to it as it finds room within the room. With less room the lines go first,
 * then the letters are smaller; a name that nowhere fits is left out: it would be read as that of the room beside.
 */
export function roomSigns(
  pen: Pen,
  signs: readonly RoomSign[],
  places: Places,
  signOf: (named: Named, room: RoomRegion) => RoomSign,
): readonly Mark[] {
  return signs.flatMap((sign) => {
    const spots = spotsIn(pen, sign);
    for (const rows of variants(pen, sign)) {
      const [width, height] = sizeOf(pen, rows);
      const middle = spots(width, height).find((spot) => places.claim(spot, width + 8, height + 4));
      if (middle) return [signMark(pen, sign, rows, middle, signOf)];
    }
    const [name] = variants(pen, sign).slice(-1);
    const [width, height] = sizeOf(pen, name ?? []);
    const middle = name && spots(width, height).find((spot) => places.claim(spot, width, height, true));
    return name && middle ? [signMark(pen, sign, name, middle, signOf)] : [];
  });
}

/** A sign that goes along with its name's place, and says what is so now. */
function signMark(
  pen: Pen,
  sign: RoomSign,
  rows: readonly Row[],
  middle: XY,
  signOf: (named: Named, room: RoomRegion) => RoomSign,
): Mark {
  return {
    draw: (on) => writeRows(on, rows, middle),
    box: boxAbout(middle, ...sizeOf(pen, rows)),
    followed: function (this: Mark, on, named) {
      const room = named.region.rooms.find((each) => each.room.key === sign.room.room.key);
      if (!room) return null;
      const now = signOf(named, room);
      if (room === sign.room && now.chosen === sign.chosen && now.name === sign.name) return this;
      const [from, to] = [px(on, sign.at), px(on, now.at)];
      const texts = [now.name, ...now.lines];
      const said = rows.map((row, index) => ({ ...row, text: texts[index] ?? '' }));
      return signMark(on, now, said, [middle[0] + to[0] - from[0], middle[1] + to[1] - from[1]], signOf);
    },
  };
}

/** From the fullest to the shortest. */
function variants({ theme }: Pen, { name, lines, chosen }: RoomSign): readonly (readonly Row[])[] {
  const colour = chosen ? theme.accent : theme.ink;
  const head = (sizePx: number): Row => ({ text: name, style: { sizePx, bold: true, colour, halo: theme.paper } });
  const small = lines.map((text): Row => ({ text, style: { ...SMALL, colour: theme.inkSoft, halo: theme.paper } }));
  return [
    [head(READ.sizePx), ...small],
    [head(READ.sizePx), ...small.slice(0, 1)],
    ...[READ, SMALL, FINE].map(({ sizePx }) => [head(sizePx)]),
  ];
}

/** Middles for a text of some size that lies wholly within the room, the nearest to the name's own place first. */
function spotsIn(pen: Pen, { room, at }: RoomSign): (width: number, height: number) => readonly XY[] {
  const rings = room.room.floorRings;
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const own = px(pen, at);
  const [left, top] = px(pen, [minX, minY]);
  const [right, bottom] = px(pen, [maxX, maxY]);
  const holds = (point: XY) => ringsContain(rings, toPlan(pen.view, point));
  return (width, height) => {
    const xs = along(left + width / 2, right - width / 2);
    const ys = along(top + height / 2, bottom - height / 2);
    const grid = xs.flatMap((x) => ys.map((y): XY => [x, y]));
    const far = ([x, y]: XY) => Math.hypot(x - own[0], y - own[1]);
    const inside = ([x, y]: XY) =>
      [-0.5, 0, 0.5].every((sx) => [-0.5, 0.5].every((sy) => holds([x + sx * width, y + sy * height])));
    return [own, ...grid.sort((a, b) => far(a) - far(b))].filter(inside);
  };
}

function along(from: number, to: number): readonly number[] {
  if (to < from) return [];
  const steps = Math.min(STEPS, Math.floor((to - from) / LEAST_STEP_PX));
  return Array.from({ length: steps + 1 }, (_, i) =>
    steps === 0 ? (from + to) / 2 : from + ((to - from) * i) / steps,
  );
}

function sizeOf(pen: Pen, rows: readonly Row[]): readonly [width: number, height: number] {
  const width = Math.max(0, ...rows.map(({ text, style }) => textWidth(pen, text, style)));
  return [width, rows.reduce((sum, { style }) => sum + style.sizePx * LINE_HEIGHT, 0)];
}

function writeRows(pen: Pen, rows: readonly Row[], middle: XY): void {
  let top = middle[1] - sizeOf(pen, rows)[1] / 2;
  for (const { text, style } of rows) {
    const step = style.sizePx * LINE_HEIGHT;
    drawText(pen, text, [middle[0], top + step / 2], style);
    top += step;
  }
}
