/** The plan as a list of shapes and texts, for any backend to draw in the order of the list. */
import type { ArcRing, Edge } from '../../geometry/arrangement/types.ts';
import type { Tone } from '../../geometry/messages/tone.ts';
import type { Mm, XY } from '../../geometry/plan/model.ts';
import { type Extent, ringExtent } from '../../geometry/plane/body.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import type { HatchName } from '../theme/hatches.ts';

/** A color by what it is for; a verdict's tone is the color of its lines. */
export type ColorRole =
  | Tone
  | 'paper'
  | 'ground'
  | 'sheet'
  | 'ink'
  | 'inkSoft'
  | 'accent'
  | 'onAccent'
  | 'card'
  | 'edge'
  | 'poche'
  | 'below'
  | 'belowEdge'
  | 'fixture'
  | 'fixtureFill'
  | 'object'
  | 'objectFill'
  | 'dimension'
  | 'hatchEdge';

/** A line by what it is for: the medium gives it a width. */
export type LineRole =
  | 'wall'
  | 'below'
  | 'opening'
  | 'leaf'
  | 'fixture'
  | 'chosen'
  | 'sign'
  | 'object'
  | 'zone'
  | 'region'
  | 'dimension'
  | 'extension'
  | 'measured'
  | 'tag'
  | 'leader';

/** `line` is a width of its own in the units of the medium, for what is drawn in them. */
export interface Ink {
  readonly fill?: ColorRole;
  /** The hatch lies over the fill. */
  readonly hatch?: HatchName;
  /** How outlines that overlap are filled; left out, by the non-zero rule. */
  readonly rule?: 'evenodd';
  readonly line?: LineRole | number;
  readonly color?: ColorRole;
  readonly dash?: 'overhead' | 'passage' | 'below' | readonly number[];
  readonly opacity?: number;
}

/** Edges or points that join. */
type Outline = {
  readonly closed: boolean;
} & ({ readonly points: readonly XY[] } | { readonly edges: readonly Edge[] });

/** Outlines that are made once and kept, with the rectangle that holds them; the width of lines comes on top. */
export interface Part {
  readonly extent: Extent;
  readonly outlines: readonly Outline[];
}

/** Parts that are drawn in one ink, as one: overlaps are not drawn twice. */
export interface Shape {
  readonly ink: Ink;
  readonly parts: readonly Part[];
  /** Nothing is drawn outside these. */
  readonly within?: readonly Part[];
}

export function ringsPart(rings: readonly Ring[]): Part {
  return { extent: ringExtent(rings.flat()), outlines: rings.map((points) => ({ points, closed: true })) };
}

/** @param extent where it is known already */
export function arcRingsPart(rings: readonly ArcRing[], extent = edgesExtent(rings.flat())): Part {
  return { extent, outlines: rings.map((edges) => ({ edges, closed: true })) };
}

export function linesPart(lines: readonly (readonly XY[])[]): Part {
  return { extent: ringExtent(lines.flat()), outlines: lines.map((points) => ({ points, closed: false })) };
}

/** Four arms about a middle. @param turn of the first, degrees */
export function crossPart([x, y]: XY, from: number, to: number, turn = 0): Part {
  const arms = [0, 90, 180, 270].map((quarter) => {
    const angle = ((turn + quarter) * Math.PI) / 180;
    return [from, to].map((reach): XY => [x + reach * Math.cos(angle), y + reach * Math.sin(angle)]);
  });
  return linesPart(arms);
}

/** A line in a casing of paper, which keeps it legible on any hatch. @param casing width of it, as a multiple of the line's */
export function casedLine(
  part: Part,
  line: number,
  color: ColorRole,
  casing: number,
  dash?: Ink['dash'],
): readonly Shape[] {
  return [
    { ink: { line: line * casing, color: 'paper' }, parts: [part] },
    { ink: { line, color, ...(dash ? { dash } : {}) }, parts: [part] },
  ];
}

export function edgesPart(runs: readonly (readonly Edge[])[], extent = edgesExtent(runs.flat())): Part {
  return { extent, outlines: runs.map((edges) => ({ edges, closed: false })) };
}

/** A circle about each middle. */
export function discsPart(middles: readonly XY[], radius: Mm): Part {
  return arcRingsPart(middles.map((center) => [arc(center, radius, 0, 2 * Math.PI)]));
}

export function arc(center: XY, radius: Mm, start: number, sweep: number): Edge {
  return { kind: 'arc', center, radius, start, sweep };
}

function edgesExtent(edges: readonly Edge[]): Extent {
  return ringExtent(
    edges.flatMap((edge): readonly XY[] => {
      if (edge.kind === 'line') return [edge.from, edge.to];
      const [[x, y], r] = [edge.center, edge.radius];
      return [
        [x - r, y - r],
        [x + r, y + r],
      ];
    }),
  );
}
