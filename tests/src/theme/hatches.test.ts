import { describe, expect, it } from 'vitest';
import { RULE_IDS } from '../../../geometry/rules/types.ts';
import { HATCHES, roomHatch, ruleHatch } from '../../../src/theme/hatches.ts';

describe('the hatches', () => {
  it('are all different in what they draw, so that rules are told apart without color', () => {
    const drawn = Object.values(HATCHES).map(({ width, height, turn, stroke, fill }) =>
      JSON.stringify([width, height, turn, stroke, fill]),
    );
    expect(new Set(drawn).size).toBe(drawn.length);
  });

  it('cover every rule but those that take no floor of their own', () => {
    expect(RULE_IDS.filter((rule) => ruleHatch(rule) === null)).toEqual(['support', 'companion']);
  });

  it.each([
    { barredBy: null, decided: true, hatch: null },
    { barredBy: 'room-use', decided: true, hatch: 'barred' },
    { barredBy: 'room-use', decided: false, hatch: 'unlabelled' },
    { barredBy: 'level', decided: true, hatch: 'barred' },
    { barredBy: 'height-band', decided: true, hatch: 'height' },
  ] as const)('show a whole room out by $barredBy, decided $decided', ({ hatch, ...room }) => {
    expect(roomHatch(room)).toBe(hatch);
  });

  it('leave most of the paper open: figures on them must stay legible', () => {
    for (const [name, { width, height, stroke, weight }] of Object.entries(HATCHES)) {
      // A line along the cell is at the least as long as the cell is wide; curves and nets at most three times.
      const inked = stroke ? (3 * Math.max(width, height) * weight) / (width * height) : 0;
      expect(inked, name).toBeLessThan(0.4);
    }
  });
});
