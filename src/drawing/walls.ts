import type { LevelModel, OpeningBody, WallJoint, WallPiece } from '../../geometry/level/types.ts';
import type { Wall, XY } from '../../geometry/plan/model.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import { along } from '../../geometry/plane/point.ts';
import { doorSwing, type JambCorners, jambCorners } from '../../geometry/snap/opening-symbol.ts';
import { arc, edgesPart, type Ink, linesPart, type Part, ringsPart, type Shape } from './display-list.ts';

/** Walls filled, openings cut clean with their leaf, sash or passage. Plan mm. */

const bodyPart = memoize(({ body }: WallPiece | WallJoint | OpeningBody): Part => ringsPart([body]));
/** A wall too short to have a body is still shown, as a point that can be taken hold of. */
const barePart = memoize(({ from, to }: Wall): Part => linesPart([[from, to]]));

/** The shapes of a model's walls with what was chosen last: a pan paints them again and again. */
const lastWalls = new WeakMap<LevelModel, { readonly key: string; readonly shapes: readonly Shape[] }>();

export function wallShapes(model: LevelModel, chosen: ReadonlySet<string>): readonly Shape[] {
  const key = [...chosen].join(' ');
  const last = lastWalls.get(model);
  if (last?.key === key) return last.shapes;
  const shapes = buildWallShapes(model, chosen);
  lastWalls.set(model, { key, shapes });
  return shapes;
}

function buildWallShapes(model: LevelModel, chosen: ReadonlySet<string>): readonly Shape[] {
  const drawn = new Set(model.pieces.map(({ wall }) => wall.id));
  const bare = model.level.walls.filter(({ id }) => !drawn.has(id));
  const isChosen = (walls: readonly Wall[]) => walls.every(({ id }) => chosen.has(id));
  return [false, true].flatMap((wanted): readonly Shape[] => {
    const color = wanted ? 'accent' : 'poche';
    const standing = [
      ...model.pieces.filter(({ wall }) => chosen.has(wall.id) === wanted),
      ...model.joints.filter(({ walls }) => isChosen(walls) === wanted),
    ];
    return [
      // A hair of outline closes the seams between pieces.
      { ink: { fill: color, line: 'wall', color }, parts: standing.map(bodyPart) },
      { ink: { line: 'chosen', color }, parts: bare.filter(({ id }) => chosen.has(id) === wanted).map(barePart) },
    ];
  });
}

/** Walls and openings of the level below, faint and broken: nobody reads them as walls of this level. */
export function belowShapes({ pieces, joints, openings }: LevelModel): readonly Shape[] {
  const edge: Ink = { line: 'below', color: 'belowEdge', dash: 'below' };
  const walls = [...pieces, ...joints].map(bodyPart);
  return [
    // Filled over the line: of the seams between pieces nothing is left.
    { ink: edge, parts: walls },
    { ink: { fill: 'below' }, parts: walls },
    { ink: { fill: 'paper', ...edge }, parts: openings.map(bodyPart) },
  ];
}

/** The parts of an opening's symbol, each with how it is drawn. */
interface OpeningSymbol {
  readonly lines: Part;
  readonly dashed: Part | null;
  readonly leaf: Part | null;
  readonly sweep: Part | null;
}

/** @param isSeen of openings that are not, no symbol is worked out */
export function openingShapes(
  model: LevelModel,
  chosen: ReadonlySet<string>,
  isSeen: (opening: OpeningBody) => boolean = () => true,
): readonly Shape[] {
  const seen = model.openings.filter(isSeen);
  const symbols = symbolsOf(model);
  return [
    { ink: { fill: 'paper', line: 'wall', color: 'paper' }, parts: seen.map(bodyPart) },
    ...[false, true].flatMap((wanted): readonly Shape[] => {
      const color = wanted ? 'accent' : 'fixture';
      const drawn = seen
        .filter(({ opening }) => chosen.has(opening.id) === wanted)
        .flatMap((each) => symbols(each) ?? []);
      const shape = (ink: Ink, part: (symbol: OpeningSymbol) => Part | null): Shape => ({
        ink: { color, ...ink },
        parts: drawn.flatMap((symbol) => part(symbol) ?? []),
      });
      return [
        shape({ line: 'opening' }, ({ lines }) => lines),
        shape({ line: 'opening', dash: 'passage' }, ({ dashed }) => dashed),
        shape({ line: 'leaf' }, ({ leaf }) => leaf),
        shape({ line: 'object' }, ({ sweep }) => sweep),
      ];
    }),
  ];
}

/** Worked out once for a model: to which side a door opens hangs on the rooms on both sides of it. */
const symbolsOf = memoize((model: LevelModel) => {
  const known = new Map<OpeningBody, OpeningSymbol | null>();
  return (opening: OpeningBody): OpeningSymbol | null => {
    const symbol = known.get(opening) ?? openingSymbol(model, opening);
    known.set(opening, symbol);
    return symbol;
  };
});

function openingSymbol(model: LevelModel, { opening }: OpeningBody): OpeningSymbol | null {
  const corners = jambCorners(model.level, opening);
  if (!corners) return null;
  const jambs: readonly (readonly XY[])[] = [corners.near, corners.far];
  const plain = { dashed: null, leaf: null, sweep: null };
  if (opening.kind === 'window') {
    // The frame along both faces and the glass between.
    return { ...plain, lines: linesPart([...jambs, ...lengthwise(corners, [0, 0.42, 0.58, 1])]) };
  }
  const lines = linesPart(jambs);
  if (opening.kind === 'passage') return { ...plain, lines, dashed: linesPart(lengthwise(corners, [0, 1])) };
  const swing = doorSwing(model, opening.id);
  if (!swing) return { ...plain, lines };
  const { hinge, open, width, start, sweep } = swing;
  return {
    ...plain,
    lines,
    leaf: linesPart([[hinge, open]]),
    sweep: edgesPart([[arc(hinge, width, start, sweep)]]),
  };
}

/** From jamb to jamb, at shares of the way through the wall. */
function lengthwise({ near, far }: JambCorners, shares: readonly number[]): readonly (readonly XY[])[] {
  return shares.map((share) => [along(near[0], near[1], share), along(far[0], far[1], share)]);
}
