import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDetector } from '../geometry/check/check-detector.ts';
import { nearGaps } from '../geometry/dimension/wall-gaps.ts';
import { buildLevel } from '../geometry/level/build-level.ts';
import { checkFigures, describeCheck, figureWithLimit } from '../geometry/messages/index.ts';
import type { Level, Plan, Wall, XY } from '../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../geometry/planfile/empty.ts';
import { writePlan } from '../geometry/planfile/write.ts';
import { levelRegion } from '../geometry/region/level-region.ts';
import { fieldLength, formatLength, formatMeasured, formatRequired } from '../geometry/units/format.ts';
import { type LengthUnit, parseLength } from '../geometry/units/index.ts';
import { zoneName } from '../src/drawing/words.ts';
import { drawDocument } from '../src/report/documents/draw-document.ts';
import { drawSheets } from '../src/report/draw-sheets.ts';
import { limitWords } from '../src/report/notes.ts';
import { gapWords } from '../src/state/side-by-side.ts';
import { callCli } from './helpers/call-cli.ts';
import { evenly } from './helpers/evenly.ts';
import { sheetTexts } from './helpers/sheet-texts.ts';

const read = (text: string, unit: LengthUnit): number => {
  const length = parseLength(text, unit, { negative: true });
  if (!length.ok) throw new Error(`${text}: ${length.message}`);
  return length.mm;
};
const units = fc.constantFrom<LengthUnit>('feet-inches', 'metric');
const STEP = { 'feet-inches': 3.175, metric: 5 } as const;

describe('a length toward caution', () => {
  const lengths = fc.oneof(
    evenly(0, 30_000),
    fc.integer({ min: 0, max: 9000 }).map((eighths) => (eighths * 25.4) / 8),
    fc.integer({ min: 0, max: 6000 }).map((steps) => steps * 5),
  );

  it('is never less than is required, never more than was measured, and less than a step off', () => {
    fc.assert(
      fc.property(lengths, units, (mm, unit) => {
        const required = read(formatRequired(mm, unit), unit);
        expect(required).toBeGreaterThan(mm - 1e-4);
        expect(required).toBeLessThan(mm + STEP[unit]);
        const measured = read(formatMeasured(mm, unit), unit);
        // What a limit may be missed by, 0.1 mm, is forgiven in words too.
        expect(measured).toBeLessThan(mm + 0.1 + 1e-4);
        expect(measured).toBeGreaterThan(mm + 0.1 - STEP[unit]);
      }),
      { numRuns: 2000 },
    );
  });

  it('the other way round for a greatest length', () => {
    fc.assert(
      fc.property(lengths, units, (mm, unit) => {
        const required = read(formatRequired(mm, unit, 'most'), unit);
        expect(required).toBeLessThan(mm + 1e-4);
        expect(required).toBeGreaterThan(mm - STEP[unit]);
        const measured = read(formatMeasured(mm, unit, 'most'), unit);
        expect(measured).toBeGreaterThan(mm - 0.1 - 1e-4);
        expect(measured).toBeLessThan(mm - 0.1 + STEP[unit]);
      }),
      { numRuns: 2000 },
    );
  });

  it('keeps the order of what meets a limit on a mark: it never reads as short of it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2000 }), evenly(-0.1, 100), (eighths, over) => {
        const required = (eighths * 25.4) / 8;
        const said = read(formatMeasured(required + over, 'feet-inches'), 'feet-inches');
        expect(said).toBeGreaterThan(required - 1e-4);
      }),
    );
  });

  it.each([
    // Four inches, 36 in and the rest are no marks of a metric tape; 50 cm is none of one in inches.
    ['required', 101.6, 'metric', '10.5 cm'],
    ['required', 500, 'feet-inches', '1 ft 7 3/4 in'],
    ['required', 914.4, 'feet-inches', '3 ft'],
    ['at most', 1828.8, 'metric', '1.825 m'],
    ['at most', 203.2, 'metric', '20 cm'],
    ['at most', 127, 'feet-inches', '5 in'],
    ['measured', 313.7, 'feet-inches', '1 ft 1/4 in'],
    ['measured', 914.3, 'feet-inches', '3 ft'],
    ['measured', 914.29, 'feet-inches', '2 ft 11 7/8 in'],
    ['measured', -1e-9, 'feet-inches', '0 in'],
    ['measured', -114.3, 'feet-inches', '-4 1/2 in'],
  ] as const)('%s %d mm in %s is %s', (how, mm, unit, words) => {
    const said = {
      required: formatRequired(mm, unit),
      'at most': formatRequired(mm, unit, 'most'),
      measured: formatMeasured(mm, unit),
    };
    expect(said[how]).toBe(words);
  });

  it('a field says no "-0 in", and what no tape has a mark for as it is said elsewhere', () => {
    expect(fieldLength(-1e-9, 'feet-inches')).toBe('0 in');
    expect(fieldLength(-1e-9, 'metric')).toBe('0 cm');
    expect(fieldLength(313.7, 'feet-inches')).toBe('≈ 1 ft 1/4 in');
    expect(fieldLength(101.6, 'metric', formatRequired)).toBe('≈ 10.5 cm');
  });
});

/** 313.7 mm, 12.35 in, from the rim to the west wall: 1 ft 1/4 in by caution, 1 ft 3/8 in to the nearest. */
const OFF = 313.7;
const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
const level: Level = {
  ...emptyLevel('L1'),
  name: 'Basement',
  walls: [
    wall('w1', [-100, -100], [9100, -100]),
    wall('w2', [9100, -100], [9100, 7100]),
    wall('w3', [9100, 7100], [-100, 7100]),
    wall('w4', [-100, 7100], [-100, -100]),
  ],
  rooms: [{ id: 'r1', name: 'Family room', use: 'family-room', at: [4000, 3000] }],
  objects: [
    {
      id: 't1',
      name: 'Desk',
      shape: { box: { center: [4000, 4000], width: 1200, depth: 600, turn: 0 } },
      bottom: 0,
      top: 900,
    },
  ],
  detectors: ['A1', 'A2'].map((label, i) => {
    // Rim to rim 150 mm apart.
    return {
      id: `d${i + 1}`,
      label,
      at: [OFF + 50.8, 3000 + i * 251.6] as XY,
      base: 762,
      radius: 50.8,
      tall: 25.4,
      pair: 'A',
    };
  }),
};
const planIn = (unit: LengthUnit, profile = 'home-short-term'): Plan => {
  const empty = emptyPlan();
  return {
    ...empty,
    display: { ...empty.display, length: unit },
    protocol: { profile, overrides: [] },
    levels: [level],
  };
};

/** Every place that says a length without a page: words, sheet, papers, command line. */
async function everything(plan: Plan): Promise<Readonly<Record<string, string>>> {
  const model = buildLevel(level);
  const reports = level.detectors.map((detector) => checkDetector(plan, model, detector));
  const checks = reports.flatMap((report) => report.checks);
  const file = join(mkdtempSync(join(tmpdir(), 'lengths-')), 'a.plan.json');
  writeFileSync(file, writePlan(plan));
  const probe = { base: 762, radius: 50.8, tall: 25.4 };
  const texts = (svgs: readonly string[]) =>
    svgs
      .flatMap(sheetTexts)
      .map(({ text }) => text)
      .join(' | ');
  const [detector] = level.detectors;
  const reach = { left: 50.8, right: 50.8, up: 50.8, down: 50.8 };
  return {
    words: checks.map((check) => describeCheck(check, plan, level)).join(' | '),
    slip: checks.map((check) => Object.values(checkFigures(check, plan)).join(' | ')).join(' | '),
    line: checks.map((check) => figureWithLimit(check, plan)).join(' | '),
    zones: levelRegion(plan, model, probe)
      .zones.map((zone) => zoneName(zone, plan, level))
      .join(' | '),
    chips: nearGaps(model, detector?.at ?? [0, 0], reach)
      .map(({ gap }) => formatMeasured(gap, plan.display.length))
      .join(' | '),
    pair: gapWords(plan) ?? '',
    sheet: texts(drawSheets({ plan, levelId: 'L1', paper: 'letter', date: '2026-03-10' })),
    log: texts(drawDocument('log', { plan, paper: 'letter', date: '2026-03-10' })),
    cli: (await callCli('check', file)).out,
  };
}

/** The places whose text has one of the words. */
function placesWith(said: Readonly<Record<string, string>>, words: RegExp): readonly string[] {
  return Object.entries(said).flatMap(([place, text]) => (words.test(text.replace(/\s/g, ' ')) ? [place] : []));
}

describe('every place that says a length', () => {
  it('says one distance with one figure', async () => {
    const said = await everything(planIn('feet-inches'));
    expect(placesWith(said, /1 ft 1\/4 in/)).toEqual(['words', 'slip', 'line', 'chips', 'sheet', 'log', 'cli']);
    expect(placesWith(said, /1 ft 3\/8 in/)).toEqual([]);
  });

  it('says no more than a greatest and no less than a least length, on screen and on paper', async () => {
    const said = await everything(planIn('metric'));
    // 72 in is 1.8288 m, 8 in 20.32 cm, 4 in 10.16 cm: none may be said as the nearest mark.
    expect(placesWith(said, /1\.83 m|20\.5 cm|(?:needs|walls,?|Required) 10 cm/)).toEqual([]);
    expect(placesWith(said, /10\.5 cm/)).toEqual(['words', 'slip', 'line', 'zones', 'pair', 'sheet', 'cli']);
    expect(placesWith(said, /10\.5 cm to 20 cm/)).toEqual(['sheet']);
    // Offered is what every published list allows: 4 to 5 in, 10.16 to 12.7 cm.
    expect(placesWith(said, /10\.5 cm to 12\.5 cm/)).toEqual(['pair']);
    expect(placesWith(said, /51 cm to 1\.825 m/)).toEqual(['sheet']);
  });

  it('says the metric limits of a list in inches as no less than they are', async () => {
    const said = await everything(planIn('feet-inches', 'health-canada-long-term'));
    // 50 cm is 19.69 in: up to the next eighth.
    expect(placesWith(said, /1 ft 7 3\/4 in/)).toEqual(['words', 'slip', 'line', 'zones', 'sheet', 'log', 'cli']);
    expect(placesWith(said, /1 ft 7 5\/8 in/)).toEqual([]);
    expect(limitWords({ least: 500, most: 2000 }, 'feet-inches')).toBe('1 ft 7 3/4 in to 6 ft 6 5/8 in');
  });
});

/** What is said to the nearest mark: sizes of things, how far something is off, what somebody typed. No distance, no limit. */
const NEAREST = new Set([
  'geometry/units/format.ts',
  'geometry/edit/square-room.ts',
  'geometry/planfile/meaning/item.ts',
  'geometry/edit/split-join.ts',
  'geometry/messages/closing.ts',
  'geometry/messages/edit.ts',
  'geometry/messages/refusal.ts',
  'src/editor/tools/handle-measure.ts',
  'src/ui/inspector/item-groups.tsx',
  'src/ui/inspector/level-entries.ts',
  'src/state/questions.ts',
  'src/report/notes.ts',
  'src/advice/air-route.ts',
]);

it('only sizes are rounded to the nearest mark; every other length says which way it is rounded', () => {
  const found: string[] = [];
  for (const root of ['geometry', 'src']) {
    for (const name of readdirSync(root, { recursive: true, encoding: 'utf8' })) {
      const file = `${root}/${name}`;
      if (!/\.tsx?$/.test(name) || NEAREST.has(file)) continue;
      const calls = readFileSync(file, 'utf8').matchAll(/formatLength\((?:[^()]|\([^()]*\))*\)/g);
      for (const [call] of calls) if (!/'(?:up|down)'\)$|round\)$/.test(call)) found.push(`${file}: ${call}`);
    }
  }
  expect(found).toEqual([]);
  expect(formatLength(1, 'metric')).toBe('0 cm');
});
