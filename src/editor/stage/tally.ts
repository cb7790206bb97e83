/** What painting has cost so far, for the tests and the benchmarks: counts, no times. */
export interface Tally {
  /** Times that a layer was painted, whole or in part. */
  readonly paints: Readonly<Record<string, number>>;
  /** Px² painted, all layers of a surface counted once each. */
  readonly areas: Readonly<Record<string, number>>;
  /** Frames in which a picture was laid elsewhere as it was. */
  readonly laid: number;
}

const paints: Record<string, number> = {};
const areas: Record<string, number> = {};
let laid = 0;

export function notePainted(layer: string, areaPx: number): void {
  paints[layer] = (paints[layer] ?? 0) + 1;
  areas[layer] = (areas[layer] ?? 0) + areaPx;
}

export function noteLaid(): void {
  laid += 1;
}

export function tallySoFar(): Tally {
  return { paints: { ...paints }, areas: { ...areas }, laid };
}
