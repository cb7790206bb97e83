import type { XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/body.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import type { RoomRegion } from '../../../geometry/region/types.ts';
import { shortened } from '../text.ts';
import type { RoomWords } from '../words.ts';
import { type Block, blockForms, blockOf, blockSlot, blockTexts, coreOf, isInside, slotPart } from './block.ts';
import { type Label, type LabelMedium, toUnits } from './medium.ts';
import type { Ground, Placer } from './placer.ts';

/** A room's label at its name's place, or as near to it as it finds room within the room; null where it nowhere fits: beside the room it would be read as that of another. */
export function roomLabel(region: RoomRegion, words: RoomWords, medium: LabelMedium, placer: Placer): Label | null {
  const rings = region.room.floorRings.map((ring) => ring.map((p) => toUnits(medium, p)));
  const holds = (p: XY) => ringsContain(rings, p);
  const places = gridPlaces(rings, toUnits(medium, region.room.label?.at ?? region.room.labelPoint), medium.type.fine);
  const blocks = roomBlocks(words, medium);
  const core = coreOf(blocks);
  const placesOver = memoize((over: readonly Ground[]) =>
    places.filter((place) => placer.isFree(blockSlot(core, place), over)),
  );
  for (const { block, over } of tries(blocks)) {
    const at = placesOver(over).find((place) => {
      const slot = blockSlot(block, place);
      return placer.isFree(slot, over) && isInside(holds, slot);
    });
    if (!at) continue;
    const slot = blockSlot(block, at);
    placer.take(slot);
    const plate = {
      ink: { fill: region.barred ? 'ground' : 'paper' },
      parts: [slotPart(slot)],
    } as const;
    return { texts: blockTexts(block, at), shapes: over === THINGS ? [plate] : [], slots: [slot] };
  }
  return null;
}

/** A longer name is shortened, in sizes of its type: the tables and the panels have it whole. */
const LONGEST = 17;

/** Halos break the edges of zones. */
const EDGES: readonly Ground[] = ['edge'];
/** At last, on a plate that hides them, over things. */
const THINGS: readonly Ground[] = ['edge', 'thing', 'outline'];

function* tries(blocks: readonly Block[]): Generator<{ readonly block: Block; readonly over: readonly Ground[] }> {
  for (const block of blocks) yield { block, over: EDGES };
  for (const block of blocks.slice(-1)) yield { block, over: THINGS };
}

/** From the fullest to the shortest. */
function roomBlocks(
  { title, area, size, barred }: RoomWords,
  { measure, type, isSmall, roomSizes }: LabelMedium,
): readonly Block[] {
  const fitting = (size: number) => shortened(title, LONGEST * size, (text) => measure(text, { size, bold: true }));
  const named = (size: number) => blockForms(fitting(size), { size, bold: true, color: 'ink', halo: 'paper' }, measure);
  const rows = (texts: readonly string[], size: number) =>
    texts.filter(Boolean).map((text) => ({ text, style: { size, color: 'inkSoft', halo: 'paper' } as const }));
  const withRows = (names: readonly Block[], texts: readonly string[], size: number) =>
    names.map(({ lines }) => blockOf([...lines, ...rows(texts, size)], measure));
  const small = named(type.fine);
  const modest = [...withRows(small, [area], type.fine), ...small];
  // On a small drawing all rooms have small type, so that none shouts.
  if (isSmall) return modest;
  const large = named(type.name);
  const sizes = roomSizes ? [area, size] : [area];
  return [
    ...withRows(large, [...sizes, barred], type.small),
    ...withRows(large, sizes, type.small),
    ...large,
    ...withRows(small, sizes, type.fine),
    ...modest,
  ];
}

/** Most steps of the grid each way. */
const STEPS = 14;

/** Points within rings, nearest to `middle` first: it comes first. Nearness counts more upward, for lines of text lie flat. */
export function gridPlaces(rings: readonly (readonly XY[])[], middle: XY, step: number): readonly XY[] {
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const grid = Math.max(step, (maxX - minX) / STEPS, (maxY - minY) / STEPS);
  const places: XY[] = [middle];
  for (let x = minX + grid; x < maxX; x += grid) for (let y = minY + grid; y < maxY; y += grid) places.push([x, y]);
  const far = ([x, y]: XY) => Math.hypot(x - middle[0], (y - middle[1]) * 1.4);
  return places
    .map((place) => ({ place, far: far(place) }))
    .sort((a, b) => a.far - b.far)
    .map(({ place }) => place);
}
