import { roomAt } from '../../../../geometry/check/room.ts';
import type { LevelModel, Room } from '../../../../geometry/level/types.ts';
import type { Fixture, PlanObject, Shape, XY } from '../../../../geometry/plan/model.ts';
import { shapeBody, shapeMiddle } from '../../../../geometry/plane/body.ts';
import { ringsContain } from '../../../../geometry/plane/ring.ts';
import { toPlan } from '../../../state/viewport.ts';
import { lengthPx, type Pen, px } from '../pen.ts';
import { drawText, FINE, SMALL, type TextStyle, textWidth } from '../text.ts';
import { boxAbout, type Mark } from './mark.ts';
import type { Places } from './places.ts';

interface Spot {
  readonly middle: XY;
  /** Turned to read from below to above. */
  readonly upright?: true;
}

/** Every thing's plain name, inside it where it fits, else beside it in its own room; left out where there is no room. */
export function thingNames(
  pen: Pen,
  model: LevelModel,
  /** From the fullest to the shortest: the first that finds room is written. */
  namesOf: (thing: Fixture | PlanObject) => readonly string[],
  places: Places,
): readonly Mark[] {
  const { theme } = pen;
  const { fixtures, objects } = model.level;
  const rows = [
    ...fixtures.map((thing) => ({ thing, style: { ...SMALL, colour: theme.ink, halo: theme.paper } })),
    ...objects.map((thing) => ({ thing, style: { ...FINE, colour: theme.inkSoft, halo: theme.paper } })),
  ];
  return rows.flatMap(({ thing, style }) => {
    for (const name of namesOf(thing)) {
      const spot = spotFor(pen, model, name, thing.shape, style, places);
      if (spot) return [thingMark(pen, thing, name, spot, style)];
    }
    return [];
  });
}

/** A name that goes along with its thing. */
function thingMark(pen: Pen, thing: Fixture | PlanObject, name: string, spot: Spot, style: TextStyle): Mark {
  const { middle, upright } = spot;
  const [long, high] = [textWidth(pen, name, style), style.sizePx];
  return {
    draw: (on) => drawText(on, name, middle, style, upright ? -Math.PI / 2 : 0),
    box: upright ? boxAbout(middle, high, long) : boxAbout(middle, long, high),
    followed: function (this: Mark, on, { model }) {
      const { fixtures, objects } = model.level;
      const now = fixtures.find(({ id }) => id === thing.id) ?? objects.find(({ id }) => id === thing.id);
      if (now === thing) return this;
      if (!now) return null;
      const [from, to] = [px(on, shapeMiddle(thing.shape)), px(on, shapeMiddle(now.shape))];
      const moved: XY = [middle[0] + to[0] - from[0], middle[1] + to[1] - from[1]];
      return thingMark(on, now, name, { ...spot, middle: moved }, style);
    },
  };
}

/** Keeps the ground of every thing free of other names. */
export function keepThings(pen: Pen, { level }: LevelModel, places: Places): void {
  for (const { shape } of [...level.fixtures, ...level.objects]) {
    const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
    const middle = px(pen, [(minX + maxX) / 2, (minY + maxY) / 2]);
    // A little less than the thing: a name may come up to its edge.
    places.avoid(middle, lengthPx(pen, maxX - minX) - 6, lengthPx(pen, maxY - minY) - 6);
  }
}

function spotFor(
  pen: Pen,
  model: LevelModel,
  text: string,
  shape: Shape,
  style: TextStyle,
  places: Places,
): Spot | null {
  const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
  const [left, top] = px(pen, [minX, minY]);
  const [right, bottom] = px(pen, [maxX, maxY]);
  const width = textWidth(pen, text, style) + 6;
  const height = style.sizePx + 5;
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  // The ground of the thing is kept free for its own name.
  if (right - left > width && bottom - top > height && places.claim([x, y], width, height, true))
    return { middle: [x, y] };
  if (bottom - top > width && right - left > height && places.claim([x, y], height, width, true))
    return { middle: [x, y], upright: true };
  const beside: XY[] = [
    [x, bottom + height / 2 + 2],
    [right + width / 2 + 3, y],
    [left - width / 2 - 3, y],
    [x, top - height / 2 - 2],
    // Below and above again, its end or its beginning at the thing: for a thing near a corner.
    [right - width / 2 + 6, bottom + height / 2 + 2],
    [left + width / 2 - 6, bottom + height / 2 + 2],
    [right - width / 2 + 6, top - height / 2 - 2],
    [left + width / 2 - 6, top - height / 2 - 2],
    [right + width / 2 + 3, bottom + height / 2],
    [left - width / 2 - 3, bottom + height / 2],
  ];
  const room = roomAt(model, shapeMiddle(shape));
  const middle = beside.find(
    (spot) => (!room || inRoom(pen, room, spot, width, height)) && places.claim(spot, width, height),
  );
  return middle ? { middle } : null;
}

/** A name over a wall is hard to read, in the next room it misleads. */
function inRoom(pen: Pen, { floorRings }: Room, [x, y]: XY, width: number, height: number): boolean {
  const holds = (dx: number, dy: number) => ringsContain(floorRings, toPlan(pen.view, [x + dx, y + dy]));
  return [-0.5, -0.25, 0, 0.25, 0.5].every((share) => [-0.3, 0.3].every((up) => holds(share * width, up * height)));
}
