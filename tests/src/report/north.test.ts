import { describe, expect, it } from 'vitest';
import { drawStrip } from '../../../src/report/north-and-scale.ts';
import { freshPlan } from '../../../src/state/fresh-plan.ts';

const AREA = { x: 0, y: 0, width: 200, height: 14 };
const FACTS = {
  scale: { ratio: 60, words: '1 in = 5 ft' },
  unit: 'feet-inches',
  ceiling: 2286,
  unmeasuredWalls: 0,
} as const;

describe('north on the plan sheet', () => {
  it('is an arrow where it is given, straight up the page too', () => {
    const svg = drawStrip(AREA, { ...FACTS, north: 0 });
    expect(svg).toContain('>N<');
    expect(svg).not.toContain('North not given');
  });

  it('is never printed from a default: the sheet states that it is not given', () => {
    expect(freshPlan().site.northAnswered).toBe(false);
    const svg = drawStrip(AREA, { ...FACTS, north: null });
    expect(svg).toContain('North not given');
    expect(svg).not.toContain('>N<');
  });
});

describe('the height of the ceiling on the plan sheet', () => {
  it('is printed where somebody has measured it', () => {
    expect(drawStrip(AREA, { ...FACTS, north: 0 })).toMatch(/Ceiling\s7\sft\s6\sin above the floor\./);
  });

  it('is never printed from a default: the sheet states that it is not measured', () => {
    expect(freshPlan().levels[0]?.ceilingAnswered).toBe(false);
    const svg = drawStrip(AREA, { ...FACTS, ceiling: null, north: 0 });
    expect(svg).toContain('Ceiling not measured.');
    expect(svg).not.toMatch(/7\sft/);
  });
});

describe('the thickness of the walls on the plan sheet', () => {
  it('is stated as not measured where nobody has measured it', () => {
    expect(drawStrip(AREA, { ...FACTS, north: 0 })).not.toContain('hickness');
    expect(drawStrip(AREA, { ...FACTS, north: 0, unmeasuredWalls: 4 })).toMatch(
      /Thickness of\s4\swalls not measured\./,
    );
  });
});
