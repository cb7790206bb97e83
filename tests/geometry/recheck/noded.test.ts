import { expect, it } from 'vitest';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/recheck/center-lines.ts';
import { nodedPieces } from '../../../geometry/recheck/noded.ts';
import { apart, direction } from '../../../geometry/recheck/plane.ts';

function line(id: string, from: XY, to: XY): Line {
  const wall: Wall = { id, from, to, thickness: 100, side: 'auto' };
  return { wall, from, to, along: direction(from, to), half: 50, drawn: true, corners: true };
}

it('keeps stretches apart whose nodes have numbers with the same digits: 1 and 112, 11 and 12', () => {
  // Corners on a circle, numbered in order; a wall runs straight from the second to the last.
  const corners = Array.from({ length: 113 }, (_, i): XY => [10_000 * Math.cos(i / 20), 10_000 * Math.sin(i / 20)]);
  const corner = (i: number) => corners[i] as XY;
  const around = corners.slice(1).map((to, i) => line(`w${i}`, corner(i), to));
  const pieces = nodedPieces([...around, line('across', corner(1), corner(112))]);
  expect(pieces).toHaveLength(113);
  expect(pieces.filter(({ lines }) => lines.length > 1)).toEqual([]);
  const across = pieces.find(({ lines }) => lines[0]?.wall.id === 'across');
  expect(across && apart(across.a, across.b)).toBe(apart(corner(1), corner(112)));
});

it('makes one piece of two walls on the same line, whichever way each is drawn', () => {
  const [a, b]: [XY, XY] = [
    [0, 0],
    [5000, 0],
  ];
  for (const other of [line('other', a, b), line('other', b, a)]) {
    const pieces = nodedPieces([line('one', a, b), other]);
    expect(pieces.map(({ lines }) => lines.map(({ wall }) => wall.id))).toEqual([['one', 'other']]);
  }
});
