/** What was painted since the page was opened, as counts without times, for tests and benchmarks. */
export interface PaintCounts {
  /** Times that a picture was painted, whole or in part. */
  readonly paints: Readonly<Record<string, number>>;
  /** Area painted of a picture, px². */
  readonly areas: Readonly<Record<string, number>>;
  /** Times that a painted canvas was moved or scaled without a repaint. */
  readonly placements: number;
}

const paints: Record<string, number> = {};
const areas: Record<string, number> = {};
let placements = 0;

export function countPaint(picture: string, areaPx: number): void {
  paints[picture] = (paints[picture] ?? 0) + 1;
  areas[picture] = (areas[picture] ?? 0) + areaPx;
}

export function countPlacement(): void {
  placements += 1;
}

export function paintCounts(): PaintCounts {
  return { paints: { ...paints }, areas: { ...areas }, placements };
}
