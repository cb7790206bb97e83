import { describe, expect, it } from 'vitest';
import { countsByHeights, PROFILES } from '../../../geometry/rules/profiles.ts';
import { RULE_IDS } from '../../../geometry/rules/types.ts';

/* The words of the rule table that code compares: a misspelled one would silently switch a rule off. */

const MEASURED = {
  'room-use': ['none'],
  level: ['none'],
  'height-band': ['height'],
  ceiling: ['height'],
  support: ['none'],
  object: ['space'],
  companion: ['plan'],
} as Readonly<Record<string, readonly string[]>>;

const SUBJECT = {
  'room-use': 'room',
  level: 'level',
  'height-band': 'height',
  ceiling: 'ceiling',
  'outside-opening': 'opening',
  'outside-wall': 'outside-wall',
  'inside-wall': 'inside-wall',
  'moving-air': 'fixture',
  'running-machine': 'running',
  heat: 'fixture',
  'direct-sun': 'sun',
  sump: 'fixture',
  'floor-drain': 'fixture',
  'washer-dryer': 'fixture',
  object: 'object',
  support: 'support',
  companion: 'companion',
} as Readonly<Record<string, string>>;

describe.each(PROFILES.map((profile) => [profile.id, profile] as const))('the list %s', (id, profile) => {
  const { rules, term, coverage } = profile;

  it('measures each rule on what it is about, as the rule says', () => {
    for (const { id: rule, subject, measured } of rules) {
      expect([rule, subject.of]).toEqual([rule, SUBJECT[rule]]);
      expect(MEASURED[rule] ?? ['plan'], rule).toContain(measured);
    }
  });

  it('has each rule once, under a known id, with a name, a sentence and a source', () => {
    const ids = rules.map((rule) => rule.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id: rule, name, says, sources } of rules) {
      expect(RULE_IDS).toContain(rule);
      expect(name.length, rule).toBeGreaterThan(2);
      expect(says.length, rule).toBeGreaterThan(8);
      expect(sources.length, rule).toBeGreaterThan(0);
    }
  });

  it('cites a document, and a part of it, for something', () => {
    for (const { id: rule, sources } of [...rules, { id: 'coverage', sources: coverage.sources }])
      for (const { cite, of } of sources) {
        expect(cite.length, rule).toBeGreaterThan(10);
        expect(of?.length ?? 1, rule).toBeGreaterThan(0);
        if (cite.includes('240.310')) expect(cite).toMatch(/240\.310 ?\([a-z]\)/);
        if (cite.includes('3701-69-07')) expect(cite).toMatch(/App\. A, A\.1/);
        if (cite.includes('422.130')) expect(cite).toMatch(/422\.130(?: ?\([a-z]\)|, closed|.*App)/);
      }
  });

  it('is for tests of at most 90 days, unless its name says otherwise', () =>
    expect(term).toBe(id.endsWith('long-term') ? 'long' : 'short'));
});

describe('countsByHeights(protocol, kind)', () => {
  // A distance in plan applies at all heights (geometry/README.md); only the rule of objects measures beside and above.
  it.each([
    ['mitigation-pipe', true],
    ['sump-pit', false],
    ['supply-register', false],
  ] as const)('%s of the home profile: %s', (kind, counts) =>
    expect(countsByHeights({ profile: 'home-short-term', overrides: [] }, kind)).toBe(counts),
  );
});
