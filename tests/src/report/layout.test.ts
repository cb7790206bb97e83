import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { logEntryOf } from '../../../src/protocol/custody/log-entries.ts';
import { drawSheets } from '../../../src/report/draw-sheets.ts';
import { ORIENTATIONS, type Orientation, type PaperName } from '../../../src/report/paper.ts';
import { howMany } from '../../helpers/how-many.ts';
import { pageProblems } from '../../helpers/page-problems.ts';
import { randomPlan } from '../../helpers/random-level.ts';
import { SAMPLE_NAMES, samplePlan } from '../../helpers/sample-files.ts';
import { sheetTexts } from '../../helpers/sheet-texts.ts';

/** Random levels to draw: a hundred and twenty were drawn when this was written. */
const SEEDS = howMany(3, 15);

const PAPERS: readonly PaperName[] = ['letter', 'a4'];

describe.each(SAMPLE_NAMES)('the sheets of %s', (name) => {
  const plan = samplePlan(name);

  it.each(PAPERS)(
    'on %s write nothing over another text and nothing beyond the frame, in either orientation',
    (paper) => {
      for (const orientation of ORIENTATIONS)
        for (const { id } of plan.levels) expect(troubles(plan, id, paper, orientation)).toEqual([]);
    },
  );
});

/** A plan that somebody filled with the longest texts that they could paste. */
function overlongPlan(): Plan {
  const long = 'Wwwwwwww-ÅÄÖ & <b>"long"</b> name '.repeat(40);
  const word = 'Donaudampfschifffahrt'.repeat(12);
  const plan = samplePlan('03-crowded-utility');
  return {
    ...plan,
    title: long,
    report: { drawing: { by: long, at: '2026-03-07T18:00:00-05:00' } },
    log: plan.levels.flatMap(({ detectors }) =>
      detectors.map(({ id }) => ({ ...logEntryOf(plan, id), serial: `${word} ${long}` })),
    ),
    site: { ...plan.site, label: word },
    protocol: { ...plan.protocol, overrides: plan.protocol.overrides.map((one) => ({ ...one, note: long })) },
    levels: plan.levels.map((level) => ({
      ...level,
      name: word,
      rooms: level.rooms.map((room) => ({ ...room, name: long })),
      fixtures: level.fixtures.map((fixture) => ({ ...fixture, name: `${word} ${long}` })),
      objects: level.objects.map((object) => ({ ...object, name: word })),
      detectors: level.detectors.map((detector) => ({ ...detector, label: `${detector.label} ${long}` })),
    })),
  };
}

/** Sixty detectors in a row: more than a column can hold. */
function manyDetectors(): Plan {
  const plan = samplePlan('01-plain-basement');
  const detectors = Array.from({ length: 60 }, (_, i) => ({
    id: `m${i}`,
    label: `M${i}`,
    at: [600 + (i % 12) * 450, 900 + Math.floor(i / 12) * 1200] as const,
    base: 762,
    radius: 50.8,
    tall: 25.4,
    pair: null,
  }));
  return { ...plan, levels: plan.levels.map((level) => ({ ...level, detectors })) };
}

describe('sheets of random levels, degenerate ones included', () => {
  it('write nothing over another text, nothing beyond the frame, and no figure that is none', () => {
    for (let seed = 1; seed <= SEEDS; seed++) {
      const plan = randomPlan(seed);
      for (const { id } of plan.levels) {
        const orientation = ORIENTATIONS[seed % 4 < 2 ? 0 : 1];
        expect(troubles(plan, id, seed % 2 === 0 ? 'a4' : 'letter', orientation), `seed ${seed}`).toEqual([]);
      }
    }
  });
});

describe('sheets that are hard to fill', () => {
  it.each(PAPERS)('keep overlong names within the frame and apart on %s', (paper) => {
    for (const orientation of ORIENTATIONS) expect(troubles(overlongPlan(), 'L1', paper, orientation)).toEqual([]);
  });

  it('run on over further sheets for sixty detectors, each with all its checks', () => {
    const plan = manyDetectors();
    expect(troubles(plan, 'L1', 'letter')).toEqual([]);
    const sheets = drawSheets({ plan, levelId: 'L1', paper: 'letter', date: '2026-11-25' });
    const words = sheets.flatMap((svg) => sheetTexts(svg).map(({ text }) => text));
    expect(words.filter((text) => text === 'Away from the sump pit')).toHaveLength(61);
  });

  it('say so where nothing is drawn', () => {
    const plan = samplePlan('01-plain-basement');
    const [level] = plan.levels;
    if (!level) throw new Error('the sample has no level');
    const bare = { ...level, walls: [], openings: [], rooms: [], fixtures: [], objects: [], detectors: [] };
    const [svg = ''] = drawSheets({ plan: { ...plan, levels: [bare] }, levelId: 'L1', paper: 'a4', date: 'x' });
    const words = sheetTexts(svg).map(({ text }) => text);
    expect(words).toContain('Nothing is drawn on this level yet.');
    expect(words).toContain('No detector is placed on this level.');
  });
});

const troubles = (
  plan: Plan,
  levelId: string,
  paper: PaperName,
  orientation: Orientation | undefined = undefined,
): readonly string[] => pageProblems(drawSheets({ plan, levelId, paper, orientation, date: '2026-11-25' }));
