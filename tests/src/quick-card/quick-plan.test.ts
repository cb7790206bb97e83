import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../../geometry/check/check-detector.ts';
import { checkedPlan } from '../../../geometry/edit/index.ts';
import { headlineOf, openRules, worstTone } from '../../../geometry/messages/index.ts';
import type { Opening, Plan } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { timingReport } from '../../../src/protocol/timing/timing-report.ts';
import { answersOf, type CardAnswers, FAR } from '../../../src/quick-card/answers.ts';
import { placeFacts } from '../../../src/quick-card/card-texts.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { withLooked } from '../../../src/quick-card/look-points.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import type { Doubts } from '../../../src/state/second-opinion.ts';
import { howMany } from '../../helpers/how-many.ts';
import { ANSWERED, FOOT, NOW } from './answered.ts';
import { anyAnswers } from './any-answers.ts';

const base: Plan = {
  ...emptyPlan(),
  site: { ...emptyPlan().site, timeZone: 'America/New_York', purposeAnswered: false },
};

const cardFor = (answers: Partial<CardAnswers>) => describeCard(quickPlan(base, { ...ANSWERED, ...answers }, NOW));
const levelWith = (plan: Plan) => checkPlan(plan).levels.find(({ detectors }) => detectors.length > 0);

const ANSWER_SETS = howMany(60, 300);

describe('the plan of a quick card', () => {
  it('is a plan that the reader accepts, with the answers in it after a round trip', () => {
    const plan = quickPlan(base, ANSWERED, NOW);
    expect(checkedPlan(base, plan)).toMatchObject({ ok: true });
    const read = parsePlan(writePlan(plan));
    expect(read.ok && answersOf(read.plan)).toEqual(ANSWERED);
    expect(read.ok && writePlan(read.plan)).toBe(writePlan(plan));
  });

  it('has its spot, heights and times in the words of the card', () => {
    const { spot, times } = cardFor({});
    expect(spot?.headline).toBe('Clear of what is drawn');
    expect(spot?.height).toBe('2 ft 6 in');
    // Direct sun is all that nobody has looked at.
    expect(spot?.open.map(({ rule }) => rule)).toEqual(['direct-sun']);
    expect(spot?.tapes).toHaveLength(2);
    // Closed at 20:00, 12 h before the start: 25 Pa. Code 240.310(a)(4)(iv). Then the 48 to 96 h of the leaflet.
    expect(times).toMatchObject({
      known: true,
      isPlanned: true,
      close: 'Saturday, November\u00a028, 8:00\u00a0pm',
      start: 'Sunday, November\u00a029, 8:00\u00a0am',
      fetchFrom: 'Tuesday, December\u00a01, 8:00\u00a0am',
      fetchTo: 'Thursday, December\u00a03, 8:00\u00a0am',
    });
  });

  it('has a planned placement: no exposure is counted from it, though a pick-up is recorded', () => {
    const plan = quickPlan(base, ANSWERED, NOW);
    expect(plan.visit.startPlanned).toBe(true);
    const fetched = { ...plan, visit: { ...plan.visit, end: '2026-12-01T08:00:00-05:00' } };
    expect(timingReport(fetched).checks.find(({ rule }) => rule === 'exposure')?.verdict).toBe('unknown');
  });

  it('records no closing that has not happened, and looks for nothing that was not answered', () => {
    const { plan, spot } = cardFor({ none: [], things: [] });
    expect(plan.visit.closedSince).toBeNull();
    expect(plan.levels.flatMap(({ lookedFor = [] }) => lookedFor)).toEqual([]);
    expect(spot?.open.map(({ rule }) => rule)).toEqual([
      'outside-opening',
      'moving-air',
      'heat',
      'direct-sun',
      'sump',
      'floor-drain',
      'washer-dryer',
    ]);
    expect(spot?.headline).not.toBe('Clear');
  });

  it('takes no usual height of a table or a shelf for one that somebody has measured', () => {
    const shelf = { kind: 'shelf', square: '1,5' } as const;
    for (const support of [{ kind: 'table' } as const, shelf]) {
      const { spot } = cardFor({ support: { ...support, top: null } });
      expect(spot).toMatchObject({ tone: 'clear-of-drawn', isMeasured: false });
      const point = spot?.open.find(({ rule }) => rule === 'height-band');
      expect(point).toMatchObject({
        says: null,
        words: expect.stringContaining('nobody has measured what it stands on'),
      });
      const facts = spot && placeFacts(spot).map(({ text }) => text);
      expect(facts?.at(-1)).toMatch(/not measured\. Allowed: between 1\sft\s8\sin/);
      expect(facts?.join(' ')).not.toContain('2\u00a0ft\u00a06\u00a0in above');
      const measured = cardFor({ support: { ...support, top: 1000 } }).spot;
      expect(measured?.isMeasured).toBe(true);
      expect(measured?.open.map(({ rule }) => rule)).not.toContain('height-band');
    }
  });

  it('lets no sun be worked out by the usual height of a window: somebody looks', () => {
    const { plan } = cardFor({});
    const site = { ...plan.site, latitude: 41, longitude: -75.9 };
    const card = describeCard({ ...plan, site, visit: { ...plan.visit, end: '2026-12-02T08:00:00-05:00' } });
    const point = card.spot?.points.find(({ rule }) => rule === 'direct-sun');
    expect(point).toMatchObject({ isOpen: true, says: 'I looked: no direct sun reaches the spot' });
    expect(point?.words).toContain('has its sill and its head measured');
  });

  it('says what the rule of direct sun says: what is missing, or how near the light comes', () => {
    const { plan: made } = cardFor({});
    // Sill and head as measured in the full app.
    const measured = ({ bottomAnswered: _, topAnswered: __, ...opening }: Opening): Opening => opening;
    const levels = made.levels.map((level) => ({ ...level, openings: level.openings.map(measured) }));
    const plan: Plan = { ...made, levels };
    const sunOf = (site: Partial<Plan['site']>, end: string | null, lookedFor: readonly string[] = []) => {
      const levels = plan.levels.map((level) => ({ ...level, lookedFor: [...(level.lookedFor ?? []), ...lookedFor] }));
      const more = { ...plan, site: { ...plan.site, ...site }, visit: { ...plan.visit, end }, levels };
      return describeCard(more).spot?.points.find(({ rule }) => rule === 'direct-sun');
    };
    const end = '2026-12-02T08:00:00-05:00';
    const missing = sunOf({ northAnswered: false }, null);
    expect(missing?.words).toBe(
      'Direct sun: not checked. The location of the house, north and the time of the pick-up are not given. Keep out of direct sun.',
    );
    expect(missing?.isOpen).toBe(true);
    const placed = { latitude: 41, longitude: -75.9 };
    // The window is in the wall at the top of the page: no sun comes in from the north.
    const none = { isOpen: false, says: null, words: expect.stringContaining('No direct sun comes in') };
    expect(sunOf(placed, end)).toMatchObject(none);
    expect(sunOf(placed, end, ['direct-sun'])).toMatchObject(none);
    expect(sunOf({ ...placed, northAnswered: false }, end)?.words).toContain('North is not given.');
    const lit = sunOf({ ...placed, north: 180 }, end);
    expect(lit?.words).toMatch(
      /^Direct sun: .* from the sun through the .*window, needs 4 ft\. Direct sun is worked out/,
    );
    expect(lit).toMatchObject({ isOpen: false, says: null });
  });

  it('has no times without the hours of the leaflet, or where they allow no test of 48 hours', () => {
    const silent = cardFor({ leaflet: { ...ANSWERED.leaflet, maximumHours: null } });
    expect(silent.plan.visit.start).toBeNull();
    expect(silent.times).toMatchObject({ known: false, why: expect.stringContaining('copy from the leaflet') });
    const short = cardFor({ leaflet: { ...ANSWERED.leaflet, minimumHours: 24, maximumHours: 36 } });
    expect(short.times).toMatchObject({ known: false, why: expect.stringContaining('at least 48 hours') });
  });

  it('keeps a distance of the leaflet that asks for more, and never one that asks for less', () => {
    const { plan } = cardFor({ leaflet: { ...ANSWERED.leaflet, distances: { heat: 6 * FOOT, sump: 2 * FOOT } } });
    expect(plan.protocol.overrides).toEqual([{ rule: 'heat', distance: 6 * FOOT, note: "The kit's leaflet" }]);
  });

  it('records of the leaflet what it says: no days to the laboratory from its hours, and no hours that were taken back', () => {
    const fresh: Plan = { ...base, kit: { ...base.kit, hoursAnswered: false } };
    const kitFor = (from: Plan, leaflet: Partial<CardAnswers['leaflet']>) =>
      quickPlan(from, { ...ANSWERED, leaflet: { ...ANSWERED.leaflet, ...leaflet } }, NOW);
    const silent = kitFor(fresh, { minimumHours: 48, maximumHours: 72, labDays: null });
    expect(silent.kit).toMatchObject({ maximumHours: 72, labDaysAnswered: false });
    expect(silent.kit).not.toHaveProperty('hoursAnswered');
    const received = { ...silent.visit, end: '2026-12-01T08:00:00-05:00', received: '2026-12-05T08:00:00-05:00' };
    expect(timingReport({ ...silent, visit: received }).checks.at(-1)).toMatchObject({ verdict: 'unknown' });
    expect(kitFor(silent, { minimumHours: 48, maximumHours: null, labDays: 4 }).kit).toMatchObject({
      hoursAnswered: false,
      labDaysAnswered: true,
    });
    // Entered in the full app, about which no card said anything.
    const { hoursAnswered: _, ...entered } = fresh.kit;
    const none = { minimumHours: null, maximumHours: null, labDays: null };
    expect(kitFor({ ...fresh, kit: entered }, none).kit).toEqual(entered);
  });

  it('sets two kits side by side as a pair', () => {
    const { spot } = cardFor({ kits: 2 });
    expect(spot?.detectors.map(({ pair }) => pair)).toEqual(['A', 'A']);
    expect(['clear', 'clear-of-drawn']).toContain(spot?.tone);
  });

  it('tells whole inches for two kits as for one, where they cost nothing', () => {
    const { spot } = cardFor({
      kits: 2,
      things: [
        { kind: 'window', square: '1,-1' },
        { kind: 'sump', square: '4,4' },
      ],
    });
    expect(spot?.tapes.map(({ length }) => length)).toEqual([
      expect.stringMatching(/^\d+ ft( \d+ in)?$/),
      expect.stringMatching(/^\d+ ft( \d+ in)?$/),
    ]);
    const [a, b] = spot?.detectors ?? [];
    // 4 in to 5 in from rim to rim of kits of 4 in: 32 Ill. Adm. Code 422.130(c)(2).
    const apart = a && b ? Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) - a.radius - b.radius : 0;
    expect(apart).toBeGreaterThanOrEqual(101.6 - 1e-6);
    expect(apart).toBeLessThanOrEqual(127 + 1e-6);
  });

  it('is open on the ceiling where it stands high: nobody has measured one', () => {
    // 5 ft is the lowest ceiling that there is, and 12 in are kept from it: 4 ft less the kit.
    const openAt = (top: number) =>
      cardFor({ support: { kind: 'table', top } }).spot?.open.filter(({ rule }) => rule === 'ceiling');
    expect(openAt(1100)).toEqual([]);
    const [point] = openAt(1400) ?? [];
    expect(point?.words).toMatch(/^Ceiling: nobody has measured it\. It has to be 1\sft above the kit\./);
    expect(point?.says).toBeNull();
  });

  it('is checked against a ceiling that somebody has measured, and told the heights below it', () => {
    const high = cardFor({ support: { kind: 'table', top: 1400 }, ceiling: 2400 });
    expect(high.spot?.points.map(({ rule }) => rule)).not.toContain('ceiling');
    expect(high.plan.levels[0]).not.toHaveProperty('ceilingAnswered');
    // 5 ft 6 in less the 12 in of the rule and the 1 in of the kit.
    const low = cardFor({ ceiling: 5.5 * FOOT });
    expect(low.spot?.heights).toBe('between 1 ft 8 in and 4 ft 5 in above the floor');
    const wrong = cardFor({ support: { kind: 'table', top: 1400 }, ceiling: 5.5 * FOOT });
    expect(wrong.noSpot?.why).toMatch(/too high/);
    expect(cardFor({ ceiling: 2 * FOOT }).noSpot?.why).toBe('Under this ceiling no height is left for a kit.');
  });

  it('stands on a shelf of an interior wall', () => {
    const { spot } = cardFor({ support: { kind: 'shelf', top: 1200, square: '1,5' } });
    expect(spot?.on).toBe('shelf');
    expect(spot?.detectors[0]?.base).toBe(1200);
  });
});

describe('windows and exterior doors', () => {
  it('make their wall an exterior wall, whatever was pressed', () => {
    const { plan, spot } = cardFor({ inside: ['up', 'right'], things: [{ kind: 'window', square: '1,-1' }] });
    expect(plan.levels[0]?.walls.map(({ side }) => side)).toEqual(['auto', 'inside', 'auto', 'auto']);
    expect(spot?.measure).toContain('at least 3 ft from every exterior window and door');
  });

  it('far away on this floor are drawn 10 ft away, not left out', () => {
    const { plan, spot } = cardFor({ things: [{ kind: 'outside-door', square: FAR }] });
    const [report] = levelWith(plan)?.detectors ?? [];
    const check = report?.checks.find(({ rule }) => rule === 'outside-opening');
    expect(check).toMatchObject({ verdict: 'clear', notRun: false });
    expect(check?.measured).toBeGreaterThan(10 * FOOT);
    expect(spot?.open.map(({ rule }) => rule)).not.toContain('outside-opening');
  });

  it('of one kind in squares side by side are one opening', () => {
    const { plan } = cardFor({
      things: ['-1,1', '-1,2', '-1,4'].map((square) => ({ kind: 'window' as const, square })),
    });
    // 20 ft in five squares: 4 ft each.
    expect(plan.levels[0]?.openings.map(({ width }) => Math.round(width / FOOT))).toEqual([8, 4]);
  });
});

describe('a card that is made again', () => {
  it('keeps what was recorded of its test', () => {
    const made = quickPlan(base, ANSWERED, NOW);
    const begun: Plan = {
      ...made,
      title: 'Alder Court',
      visit: { ...made.visit, closedSince: '2026-11-28T19:00:00-05:00' },
    };
    const again = quickPlan({ ...begun, levels: base.levels }, { ...ANSWERED, company: true }, NOW + 86_400_000);
    expect(again.title).toBe('Alder Court');
    expect(again.visit).toEqual(begun.visit);
    expect(answersOf(again)?.company).toBe(true);
  });
});

describe('a card whose plan was changed', () => {
  it('has no spot where the two computations differ, or where the kit is blocked now', () => {
    const { plan } = cardFor({});
    const doubts: Doubts = new Map([['d1', { how: 'differs', says: 'They differ.' } as never]]);
    expect(describeCard(plan, doubts)).toMatchObject({ spot: null, noSpot: { why: 'They differ.' } });
    const moved: Plan = {
      ...plan,
      levels: plan.levels.map((level) => ({
        ...level,
        detectors: level.detectors.map((each) => ({ ...each, at: [60, 60] as const })),
      })),
    };
    expect(describeCard(moved)).toMatchObject({ spot: null, noSpot: { why: expect.stringContaining('blocked') } });
  });
});

describe('a card of a plan in which more was drawn since', () => {
  it('no longer says that nobody found one: the plan has a sump pit', () => {
    const { plan } = cardFor({});
    const pit = {
      id: 'f9',
      kind: 'sump-pit',
      name: '',
      shape: { circle: { center: [9000, 9000], radius: 200 } },
      bottom: 0,
      top: 0,
      stream: null,
    } as const;
    const drawn: Plan = {
      ...plan,
      levels: plan.levels.map((level) => ({
        ...level,
        fixtures: [...level.fixtures, pit],
        lookedFor: (level.lookedFor ?? []).filter((rule) => rule !== 'sump'),
      })),
    };
    const points = (of: Plan) => describeCard(of).spot?.points.map(({ rule }) => rule);
    expect(points(plan)).toContain('sump');
    expect(points(drawn)).not.toContain('sump');
  });
});

describe('a card without a valid spot says why, and what would help', () => {
  it.each([
    ['an unanswered question', { use: null }, /Not answered yet: the use of the room/],
    ['a room that is not to be tested', { use: 'kitchen' }, /kitchen/i],
    ['a floor above one that is lived in', { level: 'upper' }, /Ground floor is lower/],
    ['a basement that nobody lives in', { level: 'unused-basement' }, /not lived in/],
    ['a top that is too low', { support: { kind: 'table', top: 400 } }, /too low/],
    ['a shelf on an exterior wall', { support: { kind: 'shelf', top: 1200, square: '-1,2' } }, /shelf/i],
    [
      'a sump pit in a small room',
      { across: 8 * FOOT, along: 8 * FOOT, things: [{ kind: 'sump', square: '2,2' }] },
      /7 ft from the sump pit/,
    ],
    ['a closet of a room', { across: 1.5 * FOOT, along: 1.5 * FOOT, things: [] }, /far enough from its walls/],
  ] satisfies readonly (readonly [string, Partial<CardAnswers>, RegExp])[])('%s', (_, answers, why) => {
    const card = cardFor(answers);
    expect(card.spot).toBeNull();
    expect(card.noSpot?.why).toMatch(why);
    expect(card.noSpot?.helps.length).toBeGreaterThan(0);
    expect(card.plan.levels.flatMap(({ detectors }) => detectors)).toEqual([]);
    expect(card.plan.visit.start).toBeNull();
  });
});

describe('a shelf without a spot', () => {
  const shelf = (square: string, answers: Partial<CardAnswers> = {}) =>
    cardFor({ support: { kind: 'shelf', top: 1200, square }, ...answers }).noSpot;

  it('on an exterior wall leads to another wall or a table, not off its wall', () => {
    expect(shelf('-1,2')?.why).toBe(
      'A shelf on an exterior wall is too near to it: the kit has to be 1 ft from the wall, and a shelf is about as deep.',
    );
    expect(shelf('-1,2')?.helps[0]).toContain('another room of the house behind it');
  });

  it('near a thing names it as it was asked', () => {
    expect(shelf('5,2')?.why).toBe('No spot on that shelf: it has to be at least 4 ft from heat sources.');
  });

  it.each([1, 2] as const)('that is too small says how many kits it has no room for: %s', (kits) => {
    const small = { across: 4 * FOOT, along: 1.5 * FOOT, things: [], inside: ['left', 'right', 'up', 'down'] as const };
    const why = shelf('5,2', { ...small, inside: [...small.inside], kits })?.why;
    expect(why).toBe(`There is no room for ${kits === 1 ? 'a kit' : 'two kits'} on that shelf.`);
  });

  it('tells no compass points: nobody has said where north is', () => {
    const whys = fc.sample(anyAnswers, { numRuns: 150, seed: 20_261_201 }).flatMap((answers) => {
      const { why, helps } = cardFor({ ...answers, level: 'basement', use: 'den' }).noSpot ?? { why: '', helps: [] };
      return [why, ...helps];
    });
    expect(whys.filter((text) => /\b(?:north|east|south|west)\b/.test(text))).toEqual([]);
  });
});

describe('any answers', () => {
  it('give a plan whose check is what the card says, and never a spot that is blocked or not decided', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const plan = quickPlan(base, answers, NOW);
        const accepted = checkedPlan(base, plan);
        expect(accepted.ok ? '' : accepted.reason).toBe('');
        const card = describeCard(plan);
        const reports = levelWith(plan)?.detectors ?? [];
        expect(card.spot === null).toBe(reports.length === 0);
        expect(card.noSpot === null).toBe(card.spot !== null);
        if (!card.spot) return;
        for (const { verdict } of reports) expect(['clear', 'tight']).toContain(verdict);
        // Beside an open point never an all-clear: also of a washer, which the plan does not know.
        const isOpen = card.spot.open.length > 0;
        const tone = worstTone(reports);
        expect(card.spot.tone).toBe(tone === 'clear' && isOpen ? 'clear-of-drawn' : tone);
        const said = reports.map((report) => headlineOf(report).word.split(' ')[0]);
        expect(said).toContain(card.spot.headline.split(' ')[0]);
        expect(card.spot.headline.endsWith('what is drawn')).toBe(isOpen);
        // What the plan leaves open, the card names.
        const open = reports.flatMap((report) =>
          Object.values(openRules(report, plan))
            .flat()
            .map(({ id }) => id),
        );
        expect(card.spot.open.map(({ rule }) => rule)).toEqual(expect.arrayContaining(open));
        if (card.times.known) expect(timingReport(plan).latestEnd).not.toBeNull();
        else expect(plan.visit.start).toBeNull();
      }),
      { numRuns: ANSWER_SETS },
    );
  });

  it('have a spot often enough for that to be tried', () => {
    // The same answers each time: one in five has a spot, and random ones would miss a tenth now and then.
    const sets = fc.sample(anyAnswers, { numRuns: 60, seed: 20_261_130 });
    const spots = sets.filter((answers) => describeCard(quickPlan(base, answers, NOW)).spot !== null);
    expect(spots.length).toBeGreaterThan(sets.length / 10);
  });
});

describe('a look at the spot', () => {
  it('closes a point, and is taken back', () => {
    const before = cardFor({ none: [] });
    const sump = before.spot?.points.find(({ rule }) => rule === 'sump');
    const looked = sump ? describeCard(withLooked(before.plan, before.level.id, sump, NOW)) : before;
    expect(looked.level.lookedFor).toEqual(['sump']);
    expect(looked.answers.none).toEqual(['sump']);
    const again = looked.spot?.points.find(({ rule }) => rule === 'sump');
    expect(again).toMatchObject({ isOpen: false });
    expect(again && withLooked(looked.plan, looked.level.id, again, NOW)).toEqual(before.plan);
  });
});
