import { beforeEach, describe, expect, it } from 'vitest';
import { readLength } from '../../../../../src/editor/lengths/boxes/read-length.ts';
import {
  commitParts,
  partsEcho,
  partsRefusal,
  typedParts,
} from '../../../../../src/editor/lengths/boxes/typed-parts.ts';
import { type OpenLength, type SizePart, useLengths } from '../../../../../src/editor/lengths/store.ts';
import { level, openRoom } from '../../../../helpers/tool-stage.ts';

/** The width of the desk is open; its depth and its top come after it. */
const steps = (['width', 'depth', 'top'] as const).map(
  (part: SizePart) => () => ({ of: 'size', id: 'o1', part }) as const,
);
const open: OpenLength = {
  subject: { of: 'size', id: 'o1', part: 'width' },
  typing: true,
  first: null,
  moves: null,
  run: steps,
  at: 0,
  asked: 1,
};
const partsOf = (text: string) => {
  const read = readLength(open.subject);
  if (!read) throw new Error('the room has no desk');
  return typedParts(text, open, read, 'feet-inches');
};
const box = () => {
  const shape = level().objects[0]?.shape;
  return shape && 'box' in shape ? [shape.box.width, shape.box.depth] : [];
};

beforeEach(() => {
  openRoom();
  useLengths.setState({ open });
});

describe('several lengths in one text', () => {
  it.each(['22 x 28', '22x28', '22 × 28', '22 by 28', '22;28', '22" x 28"'])('%s is width and depth', (text) => {
    const parts = partsOf(text);
    expect(partsRefusal(parts)).toBe('');
    expect(partsEcho(parts)).toBe('Width 1 ft 10 in, Depth 2 ft 4 in');
    expect(commitParts(parts, open)).toBe('');
    expect(box()).toEqual([558.8, 711.2]);
    expect(useLengths.getState().open?.at).toBe(1);
  });

  it('one length is one, and says nothing that stands there already', () => {
    expect(partsOf('22 in')).toHaveLength(1);
    expect(partsEcho(partsOf('1 ft 10 in'))).toBe('');
    expect(partsEcho(partsOf('22'))).toBe('1 ft 10 in');
  });

  it('more than is asked for is refused, and nothing is set', () => {
    expect(partsRefusal(partsOf('22 x 28 x 30 x 5'))).toMatch(/Only 3 lengths are asked for/);
    expect(box()).toEqual([1200, 600]);
  });

  it('a part that is no length is refused before any is set', () => {
    expect(partsRefusal(partsOf('22 x hand'))).toMatch(/not a length/);
    expect(partsRefusal(partsOf('22 x'))).not.toBe('');
  });

  it('what the plan refuses stands in its own field with what comes after it', () => {
    expect(commitParts(partsOf('22 x 0 x 30'), open)).toMatch(/more than 0/);
    expect(box()).toEqual([558.8, 600]);
    expect(useLengths.getState().open).toMatchObject({ at: 1, first: '0 x 30' });
  });
});
