import { describe, expect, it } from 'vitest';
import { parseLength } from '../../../../geometry/units/index.ts';
import { readTapeText, withTapeUnit } from '../../../../src/editor/tape/tape-text.ts';
import { TAPE_FORMS } from './forms.ts';

describe('what a laser tape typed', () => {
  it.each(TAPE_FORMS)('%s is read as %d mm, whatever the unit of its bare numbers', (text, mm) => {
    for (const unit of [null, 'ft', 'm'] as const) {
      const read = readTapeText(text, unit, 'feet-inches');
      expect(read.kind).toBe('length');
      const length = parseLength(read.text, 'feet-inches');
      expect(length.ok && length.mm).toBeCloseTo(mm, 6);
    }
  });

  it.each([
    ['3.812', 'm', 3812],
    ['3812', 'mm', 3812],
    ['12.5', 'ft', 3810],
    ['150.5', 'in', 3822.7],
    ['381,2', 'cm', 3812],
  ] as const)('a bare %s of a tape in %s', (text, unit, mm) => {
    const read = readTapeText(text, unit, 'feet-inches');
    const length = parseLength(read.text, 'feet-inches');
    expect(length.ok && length.mm).toBeCloseTo(mm, 6);
  });

  it('asks for the unit of a bare number when nobody has said it', () => {
    expect(readTapeText('3.812', null, 'metric')).toEqual({ kind: 'bare', text: '3.812' });
  });

  it('is not a length', () => {
    const read = readTapeText("12'6'4", null, 'feet-inches');
    expect(read.kind === 'unread' && read.message).toContain('is not a length');
  });
});

describe('withTapeUnit', () => {
  it.each([
    ['3.812', '3.812', 'm', '3.812 m'],
    // A hand goes on after the space: "9 2 " and then "1/2" became "9 21/2".
    ['9 2 ', '9 2 ', null, null],
    ['12 ', '12 ', 'm', null],
    ['9 2 1/2', '1/2', null, null],
    [`12'06"1/2`, `12'06"1/2`, null, null],
  ] as const)('of a field with "%s" after "%s" was typed, the tape in %s: %s', (held, typed, unit, wanted) => {
    expect(withTapeUnit(held, typed, readTapeText(typed, unit, 'feet-inches'))).toBe(wanted);
  });
});
