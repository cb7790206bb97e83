import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinedCenterLines } from '../../../geometry/level/center-lines.ts';
import { OUTDOORS, traceFaces } from '../../../geometry/level/faces.ts';
import { type WallGraph, wallGraph } from '../../../geometry/level/graph.ts';
import { NODE_TOLERANCE } from '../../../geometry/level/tolerances.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { signedArea } from '../../../geometry/plane/ring.ts';
import { loop, rectangle, wall } from '../../helpers/drawn.ts';
import { randomPlan } from '../../helpers/random-level.ts';

function graphOf(walls: readonly Wall[]): WallGraph {
  return wallGraph(joinedCenterLines(walls).lines);
}

/** Returns edges as sorted text: "0 0 – 2000 0 a". */
function edgesOf({ nodes, edges }: WallGraph): string[] {
  return edges
    .map(({ from, to, walls }) => {
      const [p, q] = [nodes[from] as XY, nodes[to] as XY].sort((s, t) => s[0] - t[0] || s[1] - t[1]);
      return `${p?.join(' ')} – ${q?.join(' ')} ${walls.map(({ id }) => id).sort()}`;
    })
    .sort();
}

describe('wallGraph(lines)', () => {
  it('splits a long wall where others end on it', () => {
    const walls = [
      wall('a', [0, 0], [6000, 0]),
      wall('b', [2000, 0], [2000, 3000]),
      wall('c', [4000, -1000], [4000, 0]),
    ];
    expect(edgesOf(graphOf(walls))).toEqual([
      '0 0 – 2000 0 a',
      '2000 0 – 2000 3000 b',
      '2000 0 – 4000 0 a',
      '4000 -1000 – 4000 0 c',
      '4000 0 – 6000 0 a',
    ]);
  });

  it('splits two walls where they cross', () => {
    const walls = [wall('a', [0, 0], [4000, 0]), wall('b', [1000, -1000], [1000, 500])];
    expect(edgesOf(graphOf(walls))).toEqual([
      '0 0 – 1000 0 a',
      '1000 -1000 – 1000 0 b',
      '1000 0 – 1000 500 b',
      '1000 0 – 4000 0 a',
    ]);
  });

  it('makes one edge of what two walls share, and keeps both of them on it', () => {
    const walls = [wall('a', [0, 0], [4000, 0]), wall('b', [5000, 0], [1000, 0])];
    expect(edgesOf(graphOf(walls))).toEqual(['0 0 – 1000 0 a', '1000 0 – 4000 0 a,b', '4000 0 – 5000 0 b']);
  });

  it('makes one node of ends that lie within a touch of each other', () => {
    const walls = [
      wall('a', [0, 0], [1000, 0]),
      wall('b', [1000 + NODE_TOLERANCE * 0.9, 0], [1000, 1000]),
      wall('c', [1000, -NODE_TOLERANCE * 0.9], [2000, 0]),
    ];
    expect(graphOf(walls).nodes.length).toBe(4);
  });
});

describe('traceFaces(graph)', () => {
  it('sees a bare wall as no face at all', () => {
    const { faces, faceOf } = traceFaces(graphOf([wall('a', [0, 0], [4000, 0])]));
    expect(faces).toEqual([]);
    expect([...faceOf]).toEqual([OUTDOORS, OUTDOORS]);
  });

  it('gives a loop within a room to the room as a hole, and what is inside the loop to itself', () => {
    const walls = [...loop('h', rectangle(0, 0, 6000, 4000)), ...loop('c', rectangle(2000, 1000, 1000, 1000))];
    const { faces } = traceFaces(graphOf(walls));
    const areas = faces.map(({ rings }) => rings.map((ring) => signedArea(ring))).sort((a, b) => a.length - b.length);
    expect(areas).toEqual([[1e6], [24e6, -1e6]]);
  });

  it('looks on the same face on both sides of a stub, and on two faces on the sides of a partition', () => {
    const walls = [
      ...loop('h', rectangle(0, 0, 6000, 4000)),
      wall('p', [3000, 0], [3000, 4000]),
      wall('stub', [1000, 0], [1000, 1000]),
    ];
    const graph = graphOf(walls);
    const { faceOf } = traceFaces(graph);
    const sides = (id: string) => {
      const k = graph.edges.findIndex((edge) => edge.walls.some((one) => one.id === id));
      return [faceOf[2 * k], faceOf[2 * k + 1]];
    };
    expect(sides('stub')[0]).toBe(sides('stub')[1]);
    expect(new Set(sides('p')).size).toBe(2);
    expect(sides('h2')).toContain(OUTDOORS);
  });

  it('holds to what faces of a plane graph must be, on random levels', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const [level] = randomPlan(seed).levels;
        const graph = graphOf(level?.walls ?? []);
        const { faces, faceOf, around } = traceFaces(graph);
        // Every half-edge leaves exactly one node.
        expect(around.flat().sort((a, b) => a - b)).toEqual(graph.edges.flatMap((_, k) => [2 * k, 2 * k + 1]));
        // Each face: its outer ring clockwise on screen, holes the other way or without area.
        for (const { rings } of faces) {
          rings.forEach((ring, i) => {
            expect(i === 0 ? signedArea(ring) > 0 : signedArea(ring) <= 1e-3).toBe(true);
          });
        }
        // Euler's formula: faces = edges − nodes + components, without the unbounded face.
        expect(faces.length).toBe(graph.edges.length - graph.nodes.length + componentsOf(graph));
        // A ring of a face has as many corners as half-edges of the face.
        faces.forEach(({ rings }, f) => {
          const looking = [...faceOf].filter((face) => face === f).length;
          expect(rings.reduce((sum, ring) => sum + ring.length, 0)).toBe(looking);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('has areas that add up to what the outer walls enclose', () => {
    const walls = [
      ...loop('h', rectangle(0, 0, 6000, 4000)),
      wall('p', [2500, 0], [2500, 4000]),
      wall('q', [2500, 1500], [6000, 1500]),
      wall('r', [0, 3000], [2500, 1000]),
      ...loop('c', rectangle(4000, 2000, 500, 500)),
    ];
    const { faces } = traceFaces(graphOf(walls));
    const sum = faces.flatMap(({ rings }) => rings).reduce((total, ring) => total + signedArea(ring), 0);
    expect(sum).toBeCloseTo(6000 * 4000, 3);
  });
});

function componentsOf({ nodes, edges }: WallGraph): number {
  const group = nodes.map((_, i) => i);
  for (const { from, to } of edges) {
    const [a, b] = [group[from], group[to]];
    group.forEach((g, i) => {
      if (g === a) group[i] = b as number;
    });
  }
  return new Set(group).size;
}
