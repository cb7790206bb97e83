import { describe, expect, it } from 'vitest';
import { drawStrip } from '../../../src/report/north-and-scale.ts';
import { freshPlan } from '../../../src/state/fresh-plan.ts';

const AREA = { x: 0, y: 0, width: 200, height: 14 };
const FACTS = { scale: { ratio: 60, words: '1 in = 5 ft' }, unit: 'feet-inches', ceiling: 2286 } as const;

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
