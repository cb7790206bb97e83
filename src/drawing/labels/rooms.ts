import type { XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/extent.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import type { Ring } from '../../../geometry/plane/types.ts';
import type { RoomRegion } from '../../../geometry/region/types.ts';
import type { Shape } from '../display-list.ts';
import { LEADING, shortened, type Text } from '../text.ts';
import type { RoomWords } from '../words.ts';
import { type Block, blockForms, blockOf, type LabelSheet, type RoomLabel, writeFirst } from './label.ts';
import type { Ground } from './placer.ts';
import { slotAt, slotPart } from './slot.ts';

/** A longer name is shortened, as a multiple of its type size: tables and panels show it in full. */
const LONGEST = 17;
/** Ground that a name may cover as a last resort, on a plate. */
const THINGS: readonly Ground[] = ['thing', 'outline'];

/**
 * Returns a room's label at the place of its name, or at the nearest free place within the room; null if it fits nowhere: outside the room
 * it would be read as the label of another.
 */
export function roomLabel(region: RoomRegion, words: RoomWords, sheet: LabelSheet): RoomLabel | null {
  const { floorRings, label, labelPoint } = region.room;
  const { minX, minY, maxX, maxY } = ringExtent(floorRings.flat());
  const holds = (p: XY) => ringsContain(floorRings, p);
  for (const { forms, over, turns, isFine } of manners(words, sheet)) {
    const tries = turns.flatMap((turn) => {
      const [across, down] = turn === 0 ? [maxX - minX, maxY - minY] : [maxY - minY, maxX - minX];
      const fitting = forms.filter(({ width, height }) => width <= across && height <= down);
      return fitting.map((block) => ({ block, turn }));
    });
    const places = () => gridPlaces(floorRings, label?.at ?? labelPoint, sheet.type.fine, isFine);
    const written = writeFirst(tries, places, { over, holds }, sheet);
    if (written) return { ...written, shapes: over === THINGS ? [plateUnder(written.texts, sheet)] : [], region };
  }
  return null;
}

/** A plate no larger than the words, in the color of excluded floor: white would read as floor that is allowed. */
function plateUnder(texts: readonly Text[], { measure }: LabelSheet): Shape {
  const parts = texts.map(({ text, at, turn, style }) => {
    const size = { width: measure(text, style) + 0.4 * style.size, height: LEADING * style.size };
    return slotPart(slotAt(size, at, turn));
  });
  return { ink: { fill: 'ground' }, parts };
}

interface Manner {
  readonly forms: readonly Block[];
  readonly over: readonly Ground[];
  readonly turns: readonly number[];
  /** Whether the grid of places is fine: in a corridor the usual grid may miss every place that fits. */
  readonly isFine: boolean;
}

/**
 * In the order tried: all forms, from the fullest to the shortest; the bare name in small type, level or vertical; the same over things on
 * a plate.
 */
function manners(words: RoomWords, sheet: LabelSheet): readonly Manner[] {
  const { all, bare } = roomBlocks(words, sheet);
  return [
    { forms: all, over: [], turns: [0], isFine: false },
    { forms: bare, over: [], turns: [0, -90], isFine: true },
    { forms: bare, over: THINGS, turns: [0, -90], isFine: true },
  ];
}

/** The forms of a room's label, from the fullest to the shortest. */
function roomBlocks({ title, area, size, barred }: RoomWords, { measure, type, isSmall, roomSizes }: LabelSheet) {
  const named = (height: number) => {
    const style = { size: height, bold: true, color: 'ink', halo: 'paper' } as const;
    return blockForms(
      shortened(title, LONGEST * height, (text) => measure(text, style)),
      style,
      measure,
    );
  };
  const withRows = (names: readonly Block[], texts: readonly string[], height: number) => {
    const style = { size: height, color: 'inkSoft', halo: 'paper' } as const;
    const rows = texts.filter(Boolean).map((text) => ({ text, style }));
    return names.map(({ lines }) => blockOf([...lines, ...rows], measure));
  };
  const small = named(type.fine);
  const modest = [...withRows(small, [area], type.fine), ...small];
  // On a small drawing all room names have small type, so that none stands out.
  if (isSmall) return { all: modest, bare: small };
  const large = named(type.name);
  const sizes = roomSizes ? [area, size] : [area];
  const full = [...withRows(large, [...sizes, barred], type.small), ...withRows(large, sizes, type.small)];
  return { all: [...full, ...large, ...withRows(small, sizes, type.fine), ...modest], bare: small };
}

/** Most steps in each direction of the usual grid and of the fine one. */
const STEPS = { usual: 14, fine: 13 } as const;

/**
 * Returns points of a grid over the bounding rectangle of the rings, nearest to `middle` first; `middle` itself is the first. Vertical
 * distance counts 1.4 times, since lines of text are wider than high.
 * @param isFine whether the step is a quarter in each direction, as far as `STEPS` allows
 */
export function gridPlaces(rings: readonly Ring[], middle: XY, step: number, isFine = false): readonly XY[] {
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const [width, height] = [maxX - minX, maxY - minY];
  const longer = Math.max(width, height);
  const [dx, dy] = isFine
    ? [Math.max(step / 4, width / STEPS.fine), Math.max(step / 4, height / STEPS.fine)]
    : [Math.max(step, longer / STEPS.usual), Math.max(step, longer / STEPS.usual)];
  const places: XY[] = [middle];
  for (let x = minX + dx; x < maxX; x += dx) for (let y = minY + dy; y < maxY; y += dy) places.push([x, y]);
  const far = ([x, y]: XY) => Math.hypot(x - middle[0], (y - middle[1]) * 1.4);
  return places
    .map((place) => ({ place, far: far(place) }))
    .sort((a, b) => a.far - b.far)
    .map(({ place }) => place);
}
