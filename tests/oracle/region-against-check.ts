import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { arcRingsContain, nearestOnEdge } from '../../geometry/region/nearest.ts';
import type { Probe, RoomRegion } from '../../geometry/region/types.ts';
import type { Dice } from '../helpers/random-level/dice.ts';

/** Within this distance of a boundary, mm, rounding decides. */
const BAND = 0.01;

export interface ComparedRegion {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly probe: Probe;
  readonly rooms: readonly RoomRegion[];
}

/** The number of places, of those inside the region, and of those that differ within the band. */
export interface SeenPlaces {
  places: number;
  inside: number;
  banded: number;
}

/** Returns the random places of a level at which the region and a check differ, in words. */
export function placeFaults(compared: ComparedRegion, count: number, dice: Dice, seen: SeenPlaces): string[] {
  const { model, rooms } = compared;
  const floors = model.rooms.flatMap(({ centerRings }) => centerRings.flat());
  const xs = floors.map(([x]) => x);
  const ys = floors.map(([, y]) => y);
  if (floors.length === 0) return [];
  const wrong: string[] = [];
  for (let k = 0; k < count; k++) {
    const x = dice.between(Math.min(...xs), Math.max(...xs));
    const y = dice.between(Math.min(...ys), Math.max(...ys));
    const inside = rooms.some(({ rings }) => arcRingsContain(rings, [x, y]));
    seen.places++;
    if (inside) seen.inside++;
    if (inside === passes(compared, x, y)) continue;
    if (isOnTheEdge(rooms, x, y)) seen.banded++;
    else wrong.push(`(${x}, ${y}): the region says ${inside}, a check the contrary`);
  }
  return wrong;
}

/** Returns whether every rule passes, except the level, the pair and rules that were not run. */
function passes({ plan, model, probe }: ComparedRegion, x: number, y: number): boolean {
  const { checks } = checkDetector(plan, model, { ...probe, id: '', label: '', at: [x, y], pair: null }, []);
  return checks.every(
    ({ rule, notRun, verdict }) => rule === 'level' || notRun || verdict === 'clear' || verdict === 'tight',
  );
}

function isOnTheEdge(rooms: readonly RoomRegion[], x: number, y: number): boolean {
  return rooms.some(({ rings }) =>
    rings.some((ring) =>
      ring.some((edge) => {
        const [nx, ny] = nearestOnEdge(edge, [x, y]);
        return Math.hypot(nx - x, ny - y) < BAND;
      }),
    ),
  );
}
