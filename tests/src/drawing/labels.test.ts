import { describe, expect, it } from 'vitest';
import { runningDimensions } from '../../../geometry/dimension/running-dimensions.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { levelExtent } from '../../../geometry/level/level-extent.ts';
import { USUAL_DETECTOR } from '../../../geometry/plan/items.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { visibleEdges } from '../../../geometry/region/visible-edges.ts';
import type { LabelMedium } from '../../../src/drawing/labels/label.ts';
import { layOutLabels } from '../../../src/drawing/labels/layout.ts';
import { paperLines } from '../../../src/drawing/labels/paper-lines.ts';
import { tapeDistances } from '../../../src/report/tape-distances.ts';
import { textWidth } from '../../../src/report/text.ts';
import { howMany } from '../../helpers/how-many.ts';
import { labelTroubles } from '../../helpers/label-troubles.ts';
import { randomPlan } from '../../helpers/random-level.ts';
import { SAMPLE_NAMES, samplePlan } from '../../helpers/sample-files.ts';

const widths = new Map<string, number>();
const measure: LabelMedium['measure'] = (text, { size, bold = false }) => {
  const key = `${bold} ${text}`;
  const known = widths.get(key) ?? textWidth(text, { size: 1, weight: bold ? 'bold' : 'regular' });
  widths.set(key, known);
  return known * size;
};

/** Units of the medium to a mm of the plan where the house is so many of them across. */
function scaleOf(plan: Plan, across: number): number {
  const extent = levelExtent(plan.levels[0] as Plan['levels'][number]);
  return across / Math.max(extent ? Math.max(extent.maxX - extent.minX, extent.maxY - extent.minY) : 1000, 1000);
}

/** The medium with its lengths, given in its own units, as mm of the plan. */
function laid(scale: number, units: Omit<LabelMedium, 'measure' | 'area'>): LabelMedium {
  const all = <T extends object>(lengths: T): T =>
    Object.fromEntries(Object.entries(lengths).map(([name, length]) => [name, length / scale])) as T;
  const { type, dimensions, symbol } = units;
  return { ...units, measure, area: null, type: all(type), dimensions: all(dimensions), symbol: symbol / scale };
}

/** A screen on which the house is so many px across, as wide as a stage or several. */
function screen(plan: Plan, across: number): LabelMedium {
  const scale = scaleOf(plan, across);
  return laid(scale, {
    type: { fine: 13, small: 14, tag: 16, name: 16 },
    isSmall: scale < 0.025,
    roomSizes: false,
    dimensions: { outside: 20, inside: 13, step: 26, target: 24 },
    symbol: 13.5,
  });
}

/** Paper at a scale at which the house is so many mm across. */
function paper(plan: Plan, across: number): LabelMedium {
  const scale = scaleOf(plan, across);
  return laid(scale, {
    type: { fine: 2.15, small: 2.35, tag: 3.9, name: 3 },
    isSmall: scale < 1 / 150,
    roomSizes: true,
    dimensions: { outside: 6, inside: 3, step: 5.5, target: 0 },
    symbol: 1.5,
  });
}

function troubles(plan: Plan, mediumOf: (plan: Plan) => LabelMedium, isPaper: boolean): readonly string[] {
  if (plan.levels.length === 0) return [];
  const { model, labels, medium } = laidOut(plan, mediumOf, isPaper);
  return labelTroubles(model, labels, medium);
}

function laidOut(plan: Plan, mediumOf: (plan: Plan) => LabelMedium, isPaper: boolean) {
  const level = plan.levels[0] as Plan['levels'][number];
  const model = buildLevel(level);
  const region = levelRegion(plan, model, level.detectors[0] ?? USUAL_DETECTOR);
  const medium = mediumOf({ ...plan, levels: [level] });
  const dimensions = runningDimensions(model).filter(({ wallBehind }) => !isPaper || wallBehind !== null);
  const labels = layOutLabels(
    {
      plan,
      model,
      region,
      edges: visibleEdges(region.zones),
      dimensions: (['whole', 'string'] as const).map((row) => dimensions.filter((each) => each.row === row)),
      lines: isPaper
        ? paperLines(
            [],
            level.detectors.flatMap((detector) =>
              tapeDistances(plan, model, detector).map(({ side, line, length }) => ({
                line,
                words: length,
                key: `${detector.pair ?? detector.id} ${side}`,
              })),
            ),
          )
        : null,
      tagWidths: ({ label }) =>
        [`${label} clear of what is drawn`, label].map((text) => measure(text, { size: medium.type.tag, bold: true })),
      reserved: [],
      marks: [],
    },
    medium,
  );
  return { model, labels, medium };
}

const MEDIA = [
  ['a screen that shows all of it', (plan: Plan) => screen(plan, 700), false],
  ['a screen near by', (plan: Plan) => screen(plan, 1800), false],
  ['a small screen', (plan: Plan) => screen(plan, 330), false],
  ['paper', (plan: Plan) => paper(plan, 170), true],
] as const;

/** Random plans, degenerate ones included; each on one of the media in turn. */
const SEEDS = howMany(40, 500);

describe('labels', () => {
  it.each(MEDIA)(
    'of the samples on %s: none over another, struck through, or away from what it names',
    (_, medium, isPaper) => {
      for (const name of SAMPLE_NAMES)
        expect({ name, troubles: troubles(samplePlan(name), medium, isPaper) }).toEqual({ name, troubles: [] });
    },
  );

  it.each([
    [700, 20],
    [850, 22],
    [1000, 27],
  ])('name the rooms of a boarding house that is %i px across, corridors and kitchen too', (across, least) => {
    const { labels } = laidOut(samplePlan('05-boarding-house'), (plan) => screen(plan, across), false);
    const titles = labels.rooms.map(({ texts }) => texts.map(({ text }) => text).join(' '));
    expect(titles.length).toBeGreaterThanOrEqual(least);
    for (const name of ['Kitchen', 'West corridor']) expect(titles.join(', ')).toContain(name);
  });

  it(`of ${SEEDS} random plans likewise`, () => {
    const found: string[] = [];
    for (let seed = 1; seed <= SEEDS; seed++) {
      const [name, medium, isPaper] = MEDIA[seed % MEDIA.length] as (typeof MEDIA)[number];
      found.push(...troubles(randomPlan(seed), medium, isPaper).map((what) => `seed ${seed}, ${name}: ${what}`));
    }
    expect(found).toEqual([]);
  });
});
