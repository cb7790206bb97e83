import { describe, expect, it } from 'vitest';
import { SHEET_TAKEN_GROUND, SHEET_THEME, THEMES } from '../../../src/theme/tokens.ts';

// Contrast as WCAG 2.2 defines it (relative luminance of sRGB); thresholds: SC 1.4.3 text 4.5:1, SC 1.4.11 parts of controls 3:1.
function luminance(hex: string): number {
  const channel = (shift: number) => {
    const value = ((Number.parseInt(hex.slice(1), 16) >> shift) & 255) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0);
}
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** The opacity of the fill of a zone that is pointed at: `src/drawing/floor.ts`. */
const ZONE_OPACITY = 0.08;
/** Returns a color painted over another one, as a canvas mixes them. */
function over(color: string, opacity: number, ground: string): string {
  const part = (hex: string, at: number) => Number.parseInt(hex.slice(at, at + 2), 16);
  const mixed = [1, 3, 5].map((at) => Math.round(part(color, at) * opacity + part(ground, at) * (1 - opacity)));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

describe('the contrast formula', () => {
  it('gives 21 for black on white and 1 for a color on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#2a353e', '#2a353e')).toBe(1);
  });
});

describe.each(Object.entries(THEMES))('theme %s', (_key, theme) => {
  const grounds = { paper: theme.paper, card: theme.card, well: theme.well, desk: theme.desk };

  it.each(Object.entries(grounds))('text on %s passes 4.5:1', (_name, ground) => {
    for (const text of [theme.ink, theme.inkSoft, theme.accent])
      expect(contrast(text, ground)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(Object.entries(theme.verdict))('the verdict %s passes 4.5:1 as ground and as text', (_word, tone) => {
    expect(contrast(tone.on, tone.ground)).toBeGreaterThanOrEqual(4.5);
    for (const ground of [theme.paper, theme.card, theme.well]) {
      expect(contrast(tone.line, ground)).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('text on the accent passes 4.5:1', () => {
    expect(contrast(theme.onAccent, theme.accent)).toBeGreaterThanOrEqual(4.5);
  });

  it('edges of fields, walls, fixtures, dimensions and hatch edges pass 3:1', () => {
    for (const ground of [theme.paper, theme.card]) expect(contrast(theme.edge, ground)).toBeGreaterThanOrEqual(3);
    for (const line of [theme.poche, theme.fixture, theme.dimension, theme.hatch, theme.hatchEdge]) {
      expect(contrast(line, theme.paper)).toBeGreaterThanOrEqual(3);
    }
  });

  it('hatches pass 3:1 on the floor under a pointed zone, and on the walls of the level below', () => {
    const pointed = over(theme.accent, ZONE_OPACITY, theme.paper);
    for (const ground of [pointed, theme.below]) {
      for (const line of [theme.hatch, theme.hatchEdge]) expect(contrast(line, ground)).toBeGreaterThanOrEqual(3);
    }
  });
});

it('hatches in print pass 3:1 on the light fill of excluded floor', () => {
  for (const line of [SHEET_THEME.hatch, SHEET_THEME.hatchEdge])
    expect(contrast(line, SHEET_TAKEN_GROUND)).toBeGreaterThanOrEqual(3);
});
