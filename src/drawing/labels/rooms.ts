import type { XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/body.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import type { RoomRegion } from '../../../geometry/region/types.ts';
import type { Shape } from '../display-list.ts';
import { LEADING, shortened, type Text } from '../text.ts';
import type { RoomWords } from '../words.ts';
import { type Block, blockForms, blockOf, blockSlot, blockTexts, coreOf, isInside, slotPart } from './block.ts';
import { type Label, type LabelMedium, toUnits } from './medium.ts';
import type { Ground, Placer } from './placer.ts';

/** A room's label at its name's place, or as near to it as it finds room within the room; null where it nowhere fits: beside the room it would be read as that of another. */
export function roomLabel(region: RoomRegion, words: RoomWords, medium: LabelMedium, placer: Placer): Label | null {
  const rings = region.room.floorRings.map((ring) => ring.map((p) => toUnits(medium, p)));
  const holds = (p: XY) => ringsContain(rings, p);
  const middle = toUnits(medium, region.room.label?.at ?? region.room.labelPoint);
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const fits = ({ width, height }: Block, turn: number) =>
    turn === 0 ? width <= maxX - minX && height <= maxY - minY : width <= maxY - minY && height <= maxX - minX;
  for (const { forms, over, turns, isFine } of manners(words, medium)) {
    const tries = turns.flatMap((turn) => forms.filter((form) => fits(form, turn)).map((form) => ({ form, turn })));
    if (tries.length === 0) continue;
    // What lies in every form however it is turned.
    const core = coreOf(
      tries.map(({ form, turn }) => (turn === 0 ? form : { width: form.height, height: form.width })),
    );
    const places = gridPlaces(rings, middle, medium.type.fine, isFine).filter((place) =>
      placer.isFree(blockSlot(core, place), over),
    );
    for (const { form, turn } of tries) {
      const at = places.find((place) => {
        const slot = blockSlot(form, place, turn);
        return placer.isFree(slot, over) && isInside(holds, slot);
      });
      if (!at) continue;
      const slot = blockSlot(form, at, turn);
      placer.take(slot);
      const texts = blockTexts(form, at, turn);
      return { texts, shapes: over === THINGS ? [plateUnder(texts, medium)] : [], slots: [slot] };
    }
  }
  return null;
}

/** No larger than the words, and in the tone of floor that is taken: white would read as floor that is allowed. */
function plateUnder(texts: readonly Text[], { measure }: LabelMedium): Shape {
  const parts = texts.map(({ text, at, turn, style }) =>
    slotPart(blockSlot({ width: measure(text, style) + 0.4 * style.size, height: LEADING * style.size }, at, turn)),
  );
  return { ink: { fill: 'ground' }, parts };
}

/** A longer name is shortened, in sizes of its type: the tables and the panels have it whole. */
const LONGEST = 17;

/** Halos break the edges of zones. */
const EDGES: readonly Ground[] = ['edge'];
/** At last, on a plate that hides them, over things. */
const THINGS: readonly Ground[] = ['edge', 'thing', 'outline'];

interface Manner {
  readonly forms: readonly Block[];
  readonly over: readonly Ground[];
  readonly turns: readonly number[];
  /** Whether places lie closer together: in a corridor the only ones may lie between those of the usual grid. */
  readonly isFine: boolean;
}

/** From the fullest form to the shortest; then the bare name in small type where it just fits, upright in a narrow room, on a plate. */
function* manners(words: RoomWords, medium: LabelMedium): Generator<Manner> {
  const { all, bare } = roomBlocks(words, medium);
  yield { forms: all, over: EDGES, turns: [0], isFine: false };
  for (const over of [EDGES, THINGS]) yield { forms: bare, over, turns: [0, -90], isFine: true };
}

/** From the fullest to the shortest. */
function roomBlocks(
  { title, area, size, barred }: RoomWords,
  { measure, type, isSmall, roomSizes }: LabelMedium,
): { readonly all: readonly Block[]; readonly bare: readonly Block[] } {
  const fitting = (size: number) => shortened(title, LONGEST * size, (text) => measure(text, { size, bold: true }));
  const named = (size: number) => blockForms(fitting(size), { size, bold: true, color: 'ink', halo: 'paper' }, measure);
  const rows = (texts: readonly string[], size: number) =>
    texts.filter(Boolean).map((text) => ({ text, style: { size, color: 'inkSoft', halo: 'paper' } as const }));
  const withRows = (names: readonly Block[], texts: readonly string[], size: number) =>
    names.map(({ lines }) => blockOf([...lines, ...rows(texts, size)], measure));
  const small = named(type.fine);
  const modest = [...withRows(small, [area], type.fine), ...small];
  // On a small drawing all rooms have small type, so that none shouts.
  if (isSmall) return { all: modest, bare: small };
  const large = named(type.name);
  const sizes = roomSizes ? [area, size] : [area];
  const all = [
    ...withRows(large, [...sizes, barred], type.small),
    ...withRows(large, sizes, type.small),
    ...large,
    ...withRows(small, sizes, type.fine),
    ...modest,
  ];
  return { all, bare: small };
}

/** Most steps of the grid each way, and of the fine one. */
const STEPS = { usual: 14, fine: 13 } as const;

/**
 * Points within rings, nearest to `middle` first: it comes first. Nearness counts more upward, for lines of text lie flat.
 * @param isFine a quarter of the step each way, as far as there are steps
 */
export function gridPlaces(rings: readonly (readonly XY[])[], middle: XY, step: number, isFine = false): readonly XY[] {
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const [width, height, steps] = [maxX - minX, maxY - minY, isFine ? STEPS.fine : STEPS.usual];
  const longer = Math.max(width, height);
  const [dx, dy] = [isFine ? width : longer, isFine ? height : longer].map((side) =>
    Math.max(isFine ? step / 4 : step, side / steps),
  ) as [number, number];
  const places: XY[] = [middle];
  for (let x = minX + dx; x < maxX; x += dx) for (let y = minY + dy; y < maxY; y += dy) places.push([x, y]);
  const far = ([x, y]: XY) => Math.hypot(x - middle[0], (y - middle[1]) * 1.4);
  return places
    .map((place) => ({ place, far: far(place) }))
    .sort((a, b) => a.far - b.far)
    .map(({ place }) => place);
}
