import type { Opening, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';

/** Returns a house of random size with rooms, doors and windows, anywhere on earth, at any time of the year. */
export function sunnyHouse(random: () => number): Plan {
  const between = (low: number, high: number) => low + (high - low) * random();
  const [wide, deep] = [between(3000, 9000), between(3000, 8000)];
  const thick = random() < 0.1 ? 0.002 : between(80, 320);
  const turn = random() < 0.3 ? 0 : between(0, 2 * Math.PI);
  const walls: Wall[] = [];
  const openings: Opening[] = [];
  const wall = (from: XY, to: XY, thickness: number) => {
    const id = `w${walls.length}`;
    walls.push({ id, from: turned(from, turn), to: turned(to, turn), thickness, side: 'auto' });
    return { id, long: Math.hypot(to[0] - from[0], to[1] - from[1]) };
  };
  const opening = (host: { id: string; long: number }, kind: Opening['kind'], bottom: number, top: number) => {
    const width = Math.min(host.long - 300, kind === 'door' ? between(600, 1000) : between(300, 2400));
    if (width < 200) return;
    const offset = between(150, host.long - width - 150);
    openings.push({ id: `o${openings.length}`, wall: host.id, kind, offset, width, bottom, top });
  };
  const corners: XY[] = [
    [0, 0],
    [wide, 0],
    [wide, deep],
    [0, deep],
  ];
  const outer = corners.map((a, i) => wall(a, corners[(i + 1) % 4] as XY, thick));
  const count = 1 + Math.floor(random() * 3);
  for (let n = 0; n < count; n++) {
    const bottom = between(0, 1500);
    opening(
      outer[Math.floor(random() * 4)] as { id: string; long: number },
      'window',
      bottom,
      bottom + between(200, 1500),
    );
    const last = openings[openings.length - 1];
    if (last && random() < 0.2)
      openings[openings.length - 1] = {
        ...last,
        shade: { overhang: { depth: between(100, 900), above: between(0, 500) } },
      };
  }
  if (random() < 0.7) {
    const x = between(1000, wide - 1000);
    const inner = wall([x, 0], [x, deep], between(60, 150));
    if (random() < 0.8) opening(inner, 'door', 0, random() < 0.5 ? 2032 : between(900, 1800));
    if (random() < 0.3) opening(inner, 'passage', between(0, 1100), 2100);
    if (random() < 0.5) {
      const y = between(1000, deep - 1000);
      const second = wall([x, y], [wide, y], between(60, 150));
      if (random() < 0.7) opening(second, 'door', 0, 2032);
    }
  }
  if (random() < 0.4) {
    const y = between(500, deep - 500);
    wall([0, y], [between(300, 900), y], between(60, 200));
  }
  const start = Date.UTC(2026, Math.floor(random() * 12), 1 + Math.floor(random() * 28), Math.floor(random() * 24));
  const plan = emptyPlan();
  const [level] = plan.levels;
  if (!level) throw new Error('no level');
  return {
    ...plan,
    site: {
      ...plan.site,
      latitude: between(-66, 66),
      longitude: between(-180, 180),
      north: between(0, 360),
    },
    visit: {
      ...plan.visit,
      start: new Date(start).toISOString(),
      end: new Date(start + between(6, 96) * 3_600_000).toISOString(),
    },
    levels: [{ ...level, walls, openings }],
  };
}

/** Returns the same house with a wall that projects outward from one of its four. */
export function withWing(plan: Plan, random: () => number): Plan {
  const [level] = plan.levels;
  if (!level) throw new Error('no level');
  const host = level.walls[Math.floor(4 * random())] as Wall;
  const long = Math.hypot(host.to[0] - host.from[0], host.to[1] - host.from[1]);
  const along = [(host.to[0] - host.from[0]) / long, (host.to[1] - host.from[1]) / long] as const;
  const [at, out] = [400 + (long - 800) * random(), 500 + 4000 * random()];
  const from: XY = [host.from[0] + along[0] * at, host.from[1] + along[1] * at];
  // The corners of the house are clockwise on screen, so that outdoors is on the left.
  const to: XY = [from[0] + along[1] * out, from[1] - along[0] * out];
  const wing: Wall = { id: 'w99', from, to, thickness: 60 + 200 * random(), side: 'auto' };
  const isFree = ({ wall, offset, width }: Opening) =>
    wall !== host.id || Math.abs(offset + width / 2 - at) > width / 2 + 150;
  return { ...plan, levels: [{ ...level, walls: [...level.walls, wing], openings: level.openings.filter(isFree) }] };
}

function turned([x, y]: XY, turn: number): XY {
  return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
}
