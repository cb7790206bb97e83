import { describe, expect, it } from 'vitest';
import { signedDegrees } from '../../../../../src/ui/stages/site/location-words.ts';

describe('signedDegrees(text, letters)', () => {
  it.each([
    ['42.88 S', '-42.88'],
    ['42.88° s', '-42.88'],
    ['-42.88 S', '-42.88'],
    ['41.4 N', '41.4'],
    ['41,4N', '41,4'],
    ['-41.4', '-41.4'],
    ['75.6 W', '75.6 W'],
    ['', ''],
  ])('reads the latitude %j as %j', (text, plain) => {
    expect(signedDegrees(text, ['N', 'S'])).toBe(plain);
  });

  it('reads west as below zero', () => expect(signedDegrees('75.64 W', ['E', 'W'])).toBe('-75.64'));
});
