import type { LevelModel, OpeningBody, WallJoint, WallPiece } from '../../geometry/level/types.ts';
import type { Wall, XY } from '../../geometry/plan/model.ts';
import { memoize, memoizeLatest } from '../../geometry/plane/memoize.ts';
import { along } from '../../geometry/plane/point.ts';
import { doorSwing, type JambCorners, jambCorners } from '../../geometry/snap/opening-symbol.ts';
import { arc, linesPart, type Part, ringsPart, type Shape } from './display-list.ts';
import type { Ink } from './inks.ts';

/** Walls filled, openings cut clean with their leaf, sash or passage. Plan mm. */

const bodyPart = memoize(({ body }: WallPiece | WallJoint | OpeningBody): Part => ringsPart([body]));
/** A wall too short to have a body is drawn as its bare line, so that it can be selected. */
const barePart = memoize(({ from, to }: Wall): Part => linesPart([[from, to]]));

export function wallShapes(model: LevelModel, chosen: ReadonlySet<string>): readonly Shape[] {
  return wallsOf(model)(chosen);
}

/** Caches the shapes of a model's walls for the latest choice: a pan paints them many times. */
const wallsOf = memoize((model: LevelModel) =>
  memoizeLatest(
    (chosen: ReadonlySet<string>) => buildWallShapes(model, chosen),
    (chosen) => [...chosen],
  ),
);

function buildWallShapes({ pieces, joints, level }: LevelModel, chosen: ReadonlySet<string>): readonly Shape[] {
  const drawn = new Set(pieces.map(({ wall }) => wall.id));
  return [false, true].flatMap((wanted): readonly Shape[] => {
    const color = wanted ? 'accent' : 'poche';
    const isWanted = ({ id }: Wall) => chosen.has(id) === wanted;
    const bare = level.walls.filter((wall) => !drawn.has(wall.id) && isWanted(wall));
    const standing = [
      ...pieces.filter(({ wall }) => isWanted(wall)),
      ...joints.filter(({ walls }) => walls.every(({ id }) => chosen.has(id)) === wanted),
    ];
    return [
      // A thin outline closes the seams between pieces.
      { ink: { fill: color, line: 'wall', color }, parts: standing.map(bodyPart) },
      { ink: { line: 'chosen', color }, parts: bare.map(barePart) },
    ];
  });
}

/** Returns walls and openings of the level below, faint and dashed, so that they are not read as walls of this level. */
export function belowShapes({ pieces, joints, openings }: LevelModel): readonly Shape[] {
  const edge: Ink = { line: 'below', color: 'belowEdge', dash: 'below' };
  const walls = [...pieces, ...joints].map(bodyPart);
  return [
    // The fill is drawn over the lines, so that it hides those at the seams between pieces.
    { ink: edge, parts: walls },
    { ink: { fill: 'below' }, parts: walls },
    { ink: { fill: 'paper', ...edge }, parts: openings.map(bodyPart) },
  ];
}

/** How the parts of an opening's symbol are drawn. */
const SYMBOL_INKS = {
  lines: { line: 'opening' },
  dashed: { line: 'opening', dash: 'passage' },
  leaf: { line: 'leaf' },
  sweep: { line: 'object' },
} as const;
type OpeningSymbol = Partial<Readonly<Record<keyof typeof SYMBOL_INKS, Part>>>;
const SYMBOL_PARTS = Object.entries(SYMBOL_INKS) as [keyof OpeningSymbol, Ink][];

/** @param isSeen whether an opening is drawn; no symbol is computed for the others */
export function openingShapes(
  model: LevelModel,
  chosen: ReadonlySet<string>,
  isSeen: (opening: OpeningBody) => boolean = () => true,
): readonly Shape[] {
  const seen = model.openings.filter(isSeen);
  return [
    { ink: { fill: 'paper', line: 'wall', color: 'paper' }, parts: seen.map(bodyPart) },
    ...[false, true].flatMap((wanted): readonly Shape[] => {
      const color = wanted ? 'accent' : 'fixture';
      const symbols = seen.filter(({ opening }) => chosen.has(opening.id) === wanted).map(symbolsOf(model));
      return SYMBOL_PARTS.map(([part, ink]) => ({
        ink: { color, ...ink },
        parts: symbols.flatMap((symbol) => symbol[part] ?? []),
      }));
    }),
  ];
}

/** Cached by model: the side to which a door opens depends on the rooms on both sides of it. */
const symbolsOf = memoize((model: LevelModel) => memoize((opening: OpeningBody) => openingSymbol(model, opening)));

function openingSymbol(model: LevelModel, { opening }: OpeningBody): OpeningSymbol {
  const corners = jambCorners(model.level, opening);
  if (!corners) return {};
  const jambs: readonly (readonly XY[])[] = [corners.near, corners.far];
  // The frame along both faces and the glass between.
  if (opening.kind === 'window') return { lines: linesPart([...jambs, ...lengthwise(corners, [0, 0.42, 0.58, 1])]) };
  const lines = linesPart(jambs);
  if (opening.kind === 'passage') return { lines, dashed: linesPart(lengthwise(corners, [0, 1])) };
  const swing = doorSwing(model, opening.id);
  if (!swing) return { lines };
  const { hinge, open, width, start, sweep } = swing;
  return { lines, leaf: linesPart([[hinge, open]]), sweep: linesPart([[arc(hinge, width, start, sweep)]]) };
}

/** Lines from jamb to jamb, at shares of the wall's thickness. */
function lengthwise({ near, far }: JambCorners, shares: readonly number[]): readonly (readonly XY[])[] {
  return shares.map((share) => [along(near[0], near[1], share), along(far[0], far[1], share)]);
}
