import type { Wall, XY } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { writePlan } from '../../geometry/planfile/write.ts';
import { drawn } from '../helpers/drawn.ts';

const SIDE = 60_000;
/** Largest number of segments as long as the plan: more make more rooms than any house has. */
const FEW = 300;

/** Returns the file of a plan whose walls are `count` random segments, on a grid or anywhere, which form no house. */
export function wallSoup(count: number, random: (below: number) => number): string {
  const grid = [1, 50, 600, 3000][random(4)] as number;
  const reach = [400, 3000, count <= FEW ? SIDE : 1500][random(3)] as number;
  const walls = Array.from({ length: count }, (_, i): Wall => {
    const from = place(random, grid, [0, 0], SIDE);
    const to = place(random, grid, from, reach);
    return { id: `w${i}`, from, to, thickness: [0, 90, 114.3, 203.2][random(4)] as number, side: 'auto' };
  });
  return writePlan({ ...emptyPlan(), title: `${count} segments`, levels: [drawn(walls)] });
}

function place(random: (below: number) => number, grid: number, [x, y]: XY, reach: number): XY {
  const near = (from: number) => Math.round((from + random(2 * reach) - reach) / grid) * grid;
  return [near(x), near(y)];
}
