import { describe, expect, it } from 'vitest';
import { parseTurn } from '../../../geometry/units/parse-turn.ts';

describe('parseTurn(text)', () => {
  it.each([
    ['45', 45, '45° to the right'],
    ['45 right', 45, '45° to the right'],
    ['30l', -30, '30° to the left'],
    ['30° to the left', -30, '30° to the left'],
    ['-22.5', -22.5, '22.5° to the left'],
    ['−22,5', -22.5, '22.5° to the left'],
    ['-10 left', 10, '10° to the right'],
    ['0', 0, 'straight on'],
    ['180', 180, '180° to the right'],
  ])('%s is %d', (text, deg, words) => {
    expect(parseTurn(text)).toEqual({ ok: true, deg, words });
  });

  it.each([
    ['', /^Nothing is written/],
    ['forty', /^"forty" is not a turn in degrees\. Write it like 45, or 45 left\.$/],
    ['270', /^A wall turns by 180° at most, not 270°/],
    ['45 6', /not a turn/],
  ])('%j is refused', (text, says) => {
    const read = parseTurn(text);
    expect(read.ok ? '' : read.message).toMatch(says);
  });
});
