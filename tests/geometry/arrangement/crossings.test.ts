import { describe, expect, it } from 'vitest';
import { cutPair } from '../../../geometry/arrangement/crossings.ts';
import { Pieces, STRIDE } from '../../../geometry/arrangement/pieces.ts';

type Piece =
  | { readonly line: readonly [x0: number, y0: number, x1: number, y1: number] }
  | { readonly arc: readonly [cx: number, cy: number, radius: number, startDegrees: number, sweepDegrees: number] };

/** Returns the cuts of each of two pieces, as sorted fractions of its length with 9 digits. */
function cuts(...pieces: readonly [Piece, Piece]): [number[], number[]] {
  const flat = new Pieces(2);
  for (const piece of pieces) {
    if ('line' in piece) flat.line(...piece.line);
    else {
      const [cx, cy, radius, start, sweep] = piece.arc;
      flat.arc(cx, cy, radius, (start * Math.PI) / 180, (sweep * Math.PI) / 180);
    }
  }
  const found: [number[], number[]] = [[], []];
  cutPair(flat.data, 0, STRIDE, (offset, parameter) => {
    (found[offset / STRIDE] as number[]).push(Math.round(parameter * 1e9) / 1e9);
  });
  for (const list of found) list.sort((a, b) => a - b);
  return found;
}

const line = (...points: readonly [number, number, number, number]): Piece => ({ line: points });
const arc = (...numbers: readonly [number, number, number, number, number]): Piece => ({ arc: numbers });

describe('where two pieces of outline cut each other', () => {
  it.each<{ name: string; pieces: [Piece, Piece]; at: [number[], number[]]; source: string }>([
    {
      name: 'lines that cross',
      pieces: [line(0, 0, 10, 0), line(4, -1, 4, 3)],
      at: [[0.4], [0.25]],
      source: 'at (4, 0)',
    },
    {
      name: 'lines apart',
      pieces: [line(0, 0, 10, 0), line(4, 1, 4, 3)],
      at: [[], []],
      source: 'the second starts at y = 1',
    },
    {
      name: 'a line that ends on another',
      pieces: [line(0, 0, 10, 0), line(7, 0, 7, 5)],
      at: [[0.7], []],
      source: 'at its own end nothing is to be cut',
    },
    { name: 'parallel lines', pieces: [line(0, 0, 10, 0), line(0, 1, 10, 1)], at: [[], []], source: '1 apart' },
    {
      name: 'lines on one another',
      pieces: [line(0, 0, 10, 0), line(6, 0, 16, 0)],
      at: [[0.6], [0.4]],
      source: 'they share 6 to 10',
    },
    {
      name: 'a line in another, the other way',
      pieces: [line(0, 0, 10, 0), line(8, 0, 2, 0)],
      at: [[0.2, 0.8], []],
      source: 'the shorter is not cut',
    },
    {
      name: 'a line through a half circle',
      pieces: [line(-10, 3, 10, 3), arc(0, 0, 5, 0, 180)],
      at: [
        [0.3, 0.7],
        [Math.round((Math.atan2(3, 4) / Math.PI) * 1e9) / 1e9, Math.round((Math.atan2(3, -4) / Math.PI) * 1e9) / 1e9],
      ],
      source: '3-4-5: at x = ±4',
    },
    {
      name: 'a line that touches an arc',
      pieces: [line(-10, 5, 10, 5), arc(0, 0, 5, 0, 180)],
      at: [[0.5], [0.5]],
      source: 'at (0, 5)',
    },
    {
      name: 'a line past an arc',
      pieces: [line(-10, 5.001, 10, 5.001), arc(0, 0, 5, 0, 180)],
      at: [[], []],
      source: '0.001 off',
    },
    {
      name: 'a line through the half of the circle that the arc leaves out',
      pieces: [line(-10, -3, 10, -3), arc(0, 0, 5, 0, 180)],
      at: [[], []],
      source: 'the arc lies at y > 0',
    },
    {
      name: 'arcs that cross twice',
      pieces: [arc(0, 0, 5, -90, 180), arc(8, 0, 5, 90, 180)],
      at: [
        [
          Math.round((0.5 - Math.atan2(3, 4) / Math.PI) * 1e9) / 1e9,
          Math.round((0.5 + Math.atan2(3, 4) / Math.PI) * 1e9) / 1e9,
        ],
        [
          Math.round((0.5 - Math.atan2(3, 4) / Math.PI) * 1e9) / 1e9,
          Math.round((0.5 + Math.atan2(3, 4) / Math.PI) * 1e9) / 1e9,
        ],
      ],
      source: 'at (4, ±3), 3-4-5 from both centers',
    },
    {
      name: 'arcs that touch from outside',
      pieces: [arc(0, 0, 5, -90, 180), arc(12, 0, 7, 90, 180)],
      at: [[0.5], [0.5]],
      source: 'at (5, 0)',
    },
    {
      name: 'arcs that touch from inside',
      pieces: [arc(0, 0, 5, -90, 180), arc(2, 0, 3, -90, 180)],
      at: [[0.5], [0.5]],
      source: 'at (5, 0)',
    },
    {
      name: 'circles in one another',
      pieces: [arc(0, 0, 5, 0, 180), arc(0, 0, 4, 0, 180)],
      at: [[], []],
      source: 'one center, 1 apart',
    },
    {
      name: 'arcs of one circle that overlap',
      pieces: [arc(0, 0, 5, 0, 100), arc(0, 0, 5, 50, 100)],
      at: [[0.5], [0.5]],
      source: 'they share 50° to 100°',
    },
  ])('$name ($source)', ({ pieces, at }) => {
    expect(cuts(...pieces)).toEqual(at);
    expect(cuts(pieces[1], pieces[0])).toEqual([at[1], at[0]]);
  });
});
