import { describe, expect, it } from 'vitest';
import { markedCite } from '../../../geometry/messages/sources.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import type { Source, SourceMark } from '../../../geometry/rules/types.ts';
import { AGREEMENT_SOURCES } from '../../../src/protocol/conditions/agreement-text.ts';
import { conditionTexts } from '../../../src/protocol/conditions/condition-texts.ts';
import { CONDITION_ITEMS, DEVIATION_SOURCES } from '../../../src/protocol/conditions/conditions-report.ts';
import { WEATHER_TO_NOTE_SOURCES } from '../../../src/protocol/custody/weather-notes.ts';
import { describeRequirement } from '../../../src/protocol/quality/describe-quality.ts';
import * as program from '../../../src/protocol/quality/requirements.ts';
import { ACTION_LEVELS, meanReaches, reaches } from '../../../src/protocol/results/action-levels.ts';
import { exact, exactOf } from '../../../src/protocol/results/exact.ts';
import { NEXT_STEP_SOURCES } from '../../../src/protocol/results/next-step-sources.ts';
import { SECOND_TEST_FROM } from '../../../src/protocol/results/next-steps.ts';
import { PRECISION_BANDS } from '../../../src/protocol/results/precision.ts';
import { inPicocuries } from '../../../src/protocol/results/radon.ts';
import * as limits from '../../../src/protocol/timing/limits.ts';
import { timingChecks } from '../../../src/protocol/timing/timing-checks.ts';

/** Whoever in a module names sources. */
const sourcesIn = (module: object): readonly Source[] =>
  Object.values(module).flatMap((each: { sources?: readonly Source[] } | null) => each?.sources ?? []);

const ALL: readonly Source[] = [
  ...Object.values(NEXT_STEP_SOURCES).flatMap(({ sources }) => sources),
  ...ACTION_LEVELS.map(({ source }) => source),
  ...PRECISION_BANDS.flatMap(({ sources }) => sources),
  ...CONDITION_ITEMS.flatMap((item) => conditionTexts(item).sources),
  ...AGREEMENT_SOURCES,
  ...DEVIATION_SOURCES,
  ...WEATHER_TO_NOTE_SOURCES,
  ...sourcesIn(limits),
  ...sourcesIn(program),
];

/*
 * How each text was come by, typed in from the notes of the reading, not from the code: primary where the clause itself was read, secondary
 * where a copy, a summary or a page about it was, memory where neither. A text that was written for something else, and what no text says, is
 * our reading wherever it is named. The clause decides, not the document: of 32 Ill. Adm. Code 422.130 only the opening was read.
 */
const READ: readonly (readonly [text: RegExp, mark: SourceMark])[] = [
  [/^ANSI\/AARST MAH-2019, (Exh\. [24]|2\.2\.3|6\.1|7\.1|7\.2\.2, exception|7\.3\.2|8\.5)/, 'primary'],
  [/^ANSI\/AARST MAH-2019, 7\.2\.2$/, 'memory'],
  [/^ANSI\/AARST MAH-2019, 7\.3\.2, written for the test after mitigation/, 'our-reading'],
  [/^ANSI\/AARST MALB-2014 with 1\/21 revisions, (4\.1(\(b\))?|4-A|4\.2\.1|8\.1\.2\(b\))$/, 'primary'],
  [/^ANSI\/AARST MAMF-2017 with 1\/21 revisions, (2\.6\.4|2\.8\.4 \(each lot\))$/, 'primary'],
  [/^ANSI\/AARST MS-QA-2019, (3\.5|5\.3\.[13]|Companion D, 2\.(3\.7|4\.2))/, 'primary'],
  [/^ANSI\/AARST MS-QA-2019, Table 7\.1, written for duplicates in a laboratory/, 'our-reading'],
  [/^ANSI\/AARST MS-QA-2019, 7\.9\.1, written for laboratories/, 'our-reading'],
  [/^ANSI\/AARST MW-RN-2020, 8\.5, written for radon in water/, 'our-reading'],
  [/^N\.J\.A\.C\. 7:28-27\.(10\([cd]\)|16\(a\)7)/, 'primary'],
  [/^25 Pa\. Code 240\.310\(a\)/, 'primary'],
  [/^32 Ill\. Adm\. Code 422\.130\(b\)\(1\)$/, 'primary'],
  [/^32 Ill\. Adm\. Code Part 422, Appendix B$/, 'primary'],
  [/^32 Ill\. Adm\. Code 422\.70\(g\)$/, 'primary'],
  [/^Illinois Register 33 \(2009\), p\. 6844$/, 'primary'],
  [/^32 Ill\. Adm\. Code 422\.130(, closed-building list| \(at least 12 h\)|\(b\)\(1\)\(D\)|\(o\)\(1\))/, 'secondary'],
  [/^the agency note on 32 Ill\. Adm\. Code 422\.130/, 'secondary'],
  [/^Illinois (fact sheet|rules of 2005)/, 'secondary'],
  [/^Directive 2013\/59\/Euratom, Art\. 74$/, 'primary'],
  [/^Health Canada, guide for radon measurements in homes$/, 'primary'],
  [/^Health Canada, radon measurements in homes(, in Canadian summaries|: at least 91 days)$/, 'secondary'],
  [/^Health Canada guideline, on how soon to reduce$/, 'memory'],
  [/^Eur Respir J 2017;50:1701609, table of national levels$/, 'secondary'],
  [/^WHO Handbook on Indoor Radon, 2009$/, 'memory'],
  [/^EPA 402-R-92-003, (2\.3\.2 \(copy of the text\)|as told by the national program)$/, 'secondary'],
  [/^EPA 402-R-92-003, App\. B/, 'memory'],
  [/^EPA 402-R-93-078$/, 'memory'],
  [/^EPA (402\/K|checklist for home buyers|guide for home buyers and sellers, on signed)/, 'secondary'],
  [/^EPA guide for home buyers and sellers, on a refusal$/, 'memory'],
  [/^ANSI\/AARST practice as a course sums it up/, 'secondary'],
  [/^the share of the locations of a month$/, 'our-reading'],
  [/^a new test of the home, where the texts ask for the cause$/, 'our-reading'],
  [/^the factor of two, written for 4 pCi\/L, at the level of a long-term test$/, 'our-reading'],
  [/^common practice, no published source$/, 'common-practice'],
];

describe('every source of the job', () => {
  it.each([...new Map(ALL.map((source) => [markedCite(source), source])).values()])(
    '$cite: $mark',
    ({ cite, mark }) => {
      // The last that fits: what is written for something else is more than its clause.
      const known = READ.filter(([text]) => text.test(cite)).at(-1);
      expect(known?.[1]).toBe(mark);
    },
  );

  it('is one that is used', () => {
    const unused = READ.filter(([text]) => !ALL.some(({ cite }) => text.test(cite)));
    expect(unused.map(([text]) => text.source)).toEqual([]);
  });

  it('says on paper how it was come by', () => {
    const marked = ([mark, cite]: readonly [SourceMark, string]) => markedCite({ mark, cite });
    expect(marked(['primary', '25 Pa. Code 240.310(a)(4)(ii)'])).toBe('25 Pa. Code 240.310(a)(4)(ii)');
    expect(marked(['secondary', 'EPA checklist'])).toBe('EPA checklist (secondary)');
    expect(marked(['memory', 'EPA 402-R-93-078'])).toBe('EPA 402-R-93-078 (from memory)');
    expect(marked(['our-reading', 'the same for air'])).toBe('the same for air (our reading)');
    expect(marked(['our-reading', 'our reading: something has to carry it'])).toBe(
      'our reading: something has to carry it',
    );
    expect(marked(['common-practice', 'common practice, no published source'])).toBe(
      'common practice, no published source',
    );
  });
});

const cites = (sources: readonly Source[]) => sources.map(markedCite);

describe('what a text was not written for', () => {
  it('the factor two rests on a standard for water, and says so', () => {
    const { sources, conflict } = NEXT_STEP_SOURCES['retest-straddles'];
    expect(cites(sources)).toContain('ANSI/AARST MW-RN-2020, 8.5, written for radon in water, for air (our reading)');
    expect(conflict).toMatch(/a standard for radon in water only/);
  });

  it('below 2 pCi/L, and for 67 %, the table of the laboratories comes after the text for homes', () => {
    for (const band of PRECISION_BANDS.filter(({ from }) => from < 4)) {
      expect(cites(band.sources)[0]).toBe('N.J.A.C. 7:28-27.10(c)1');
      expect(cites(band.sources).filter((cite) => /Table 7\.1/.test(cite))).toEqual([
        expect.stringMatching(/written for duplicates in a laboratory.* \(our reading\)$/),
      ]);
    }
  });

  it.each([
    ['own-household', ['EPA checklist for home buyers (secondary)', /7\.3\.2, written for .* \(our reading\)$/]],
    ['property-transfer', ['EPA checklist for home buyers (secondary)', /7\.3\.2, written for .* \(our reading\)$/]],
    ['after-mitigation', ['ANSI/AARST MAH-2019, 7.3.2', 'EPA 402-R-93-078 (from memory)']],
  ] as const)('the 24 h of a system before a test, %s', (purpose, expected) => {
    const plan = emptyPlan();
    const check = timingChecks({ ...plan, site: { ...plan.site, purpose } }).find(
      ({ rule }) => rule === 'mitigation-system',
    );
    expect(cites(check?.sources ?? [])).toEqual(
      expected.map((each) => (typeof each === 'string' ? each : expect.stringMatching(each))),
    );
  });

  it('spikes: 3 % of each lot, which the book does not count', () => {
    expect(describeRequirement(program.SPIKES)).toMatch(
      /MAMF-2017 .*2\.8\.4, asks for 3% of each lot\. The book counts by month/,
    );
  });

  it('a second test at once: more than twice the action level, or from twice on', () => {
    expect(SECOND_TEST_FROM).toBe(8);
    expect(NEXT_STEP_SOURCES['second-test-now'].conflict).toMatch(
      /more than twice the action level, so above 8 .* from 8 .* on/,
    );
  });
});

describe('a level that a text says is exceeded is not exceeded by itself', () => {
  const level = (id: string) => {
    const found = ACTION_LEVELS.find((each) => each.id === id);
    if (!found) throw new Error(`no level ${id}`);
    return found;
  };
  const becquerels = (value: number) => inPicocuries({ value, unit: 'Bq/m3' });

  // Directive 2013/59/Euratom Art. 74: not above 300 Bq/m3. Health Canada: exceeds 200 Bq/m3. WHO (from memory): not above 300 Bq/m3.
  // MAH-2019, 7.1: at or above 4 pCi/L, from 2 pCi/L on. Where it is not known what a text says, from the level on is the strict reading.
  it.each([
    ['eu', 300, false],
    ['canada', 200, false],
    ['who-most', 300, false],
    ['uk', 200, true],
    ['ireland', 200, true],
    ['who', 100, true],
    ['uk-target', 100, true],
    ['us', 148, true],
    ['us-consider', 74, true],
  ] as const)('%s at %d Bq/m3: %s', (id, value, passed) => {
    expect(reaches(becquerels(value), level(id))).toBe(passed);
    expect(reaches(becquerels(value + 0.01), level(id))).toBe(true);
    expect(reaches(becquerels(value - 0.01), level(id))).toBe(false);
  });

  // 37 Bq/m3 are 1 pCi/L: 101/37 = 2.7297, reported 2.7 pCi/L = 99.9 Bq/m3; 201/37 = 5.4324, reported 5.4 = 199.8; 147/37 = 3.973, reported 4.0.
  it.each([
    ['who', 101, true],
    ['canada', 201, true],
    ['uk', 201, true],
    ['eu', 301, true],
    ['us', 147, true],
    ['us', 146, false],
  ] as const)('%s, a mean of %d Bq/m3: %s', (id, value, passed) => {
    expect(meanReaches(becquerels(value), level(id))).toBe(passed);
  });

  it('3.95 pCi/L is reported as 4.0 and has reached the level of the United States', () => {
    expect(meanReaches(exact(395n, 100n), level('us'))).toBe(true);
    expect(meanReaches(exactOf(3.94), level('us'))).toBe(false);
  });
});
