import { describe, expect, it } from 'vitest';
import { checkedPlan } from '../../../geometry/edit/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry, Visit } from '../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import type { CardAnswers } from '../../../src/quick-card/answers.ts';
import { describeCard } from '../../../src/quick-card/describe-card.ts';
import { withLooked } from '../../../src/quick-card/look-points.ts';
import { answersNow, isDrawnOn } from '../../../src/quick-card/made-again.ts';
import { quickPlan } from '../../../src/quick-card/make-plan.ts';
import { ANSWERED, FOOT, NOW } from './answered.ts';

const HOUR = 3_600_000;
const base: Plan = { ...emptyPlan(), site: { ...emptyPlan().site, timeZone: 'America/New_York' } };
const made = quickPlan(base, ANSWERED, NOW);

const visited = (plan: Plan, visit: Partial<Visit>): Plan => {
  const { startPlanned: _, ...others } = plan.visit;
  return { ...plan, visit: { ...others, ...visit } };
};
/** Placed a quarter of an hour after the planned minute, the house closed since half past seven. */
const placed = visited(made, { closedSince: '2026-11-28T19:30:00-05:00', start: '2026-11-29T08:15:00-05:00' });
const again = (plan: Plan, change: Partial<CardAnswers>, now = NOW + 20 * HOUR) =>
  quickPlan(plan, { ...ANSWERED, ...change }, now);
const detectorsOf = ({ levels }: Plan) => levels.flatMap(({ detectors }) => detectors);
const levelOf = ({ levels }: Plan) => levels.at(-1);
/** A sump pit in the middle of the room, where the kit stands. */
const pit: Partial<CardAnswers> = {
  things: [...ANSWERED.things, { kind: 'sump', square: '2,3' }],
  none: ANSWERED.none.filter((group) => group !== 'sump'),
};

describe('a kit that has been placed', () => {
  it('stays where it stands when the card is made again, and is checked against the new answers', () => {
    // Before it is placed, the same answers move it.
    expect(detectorsOf(again(made, pit))[0]?.at).not.toEqual(detectorsOf(made)[0]?.at);
    const plan = again(placed, pit);
    expect(checkedPlan(placed, plan)).toMatchObject({ ok: true });
    expect(detectorsOf(plan)).toEqual(detectorsOf(placed));
    expect(plan.visit).toEqual(placed.visit);
    const card = describeCard(plan);
    expect(card.spot).toBeNull();
    expect(card.noSpot?.why).toBe(
      'The kit is placed. By what you entered now, its place is blocked or cannot be decided.',
    );
  });

  it('keeps its tape distances where a length of the room is corrected', () => {
    const from = (plan: Plan) => describeCard(plan).spot?.tapes.map(({ side, length }) => `${length} ${side}`);
    const plan = again(placed, { across: 17 * FOOT, along: 21 * FOOT });
    expect(from(placed)?.length).toBe(2);
    expect(from(plan)).toEqual(from(placed));
  });

  it('stays with its number, whatever number of kits is answered', () => {
    const plan = again(placed, { kits: 2 });
    expect(detectorsOf(plan)).toEqual(detectorsOf(placed));
  });

  it('stays in the record where the leaflet leaves no test, or a use that may not be tested is answered', () => {
    const plan = again(placed, { use: 'kitchen' });
    expect(detectorsOf(plan)).toEqual(detectorsOf(placed));
    expect(describeCard(plan).spot).toBeNull();
    const hours = again(placed, { leaflet: { ...ANSWERED.leaflet, minimumHours: 24, maximumHours: 36 } });
    expect(detectorsOf(hours)).toEqual(detectorsOf(placed));
  });

  it('has the height of its table when that is measured later', () => {
    const [kit] = detectorsOf(again(placed, { support: { kind: 'table', top: 700 } }));
    expect(kit?.base).toBe(700);
    expect(levelOf(again(placed, { support: { kind: 'table', top: 700 } }))?.objects[0]?.top).toBe(700);
  });
});

describe('a kit that has been placed on a shelf', () => {
  const support = { kind: 'shelf', top: 1100, square: '5,3' } as const;
  const onShelf = visited(quickPlan(base, { ...ANSWERED, things: [], support }, NOW), {
    start: '2026-11-29T08:15:00-05:00',
  });
  const open = (change: Partial<CardAnswers>) =>
    describeCard(again(onShelf, { things: [], support, ...change })).spot?.open.map(({ rule }) => rule);

  it.each<readonly [string, Partial<CardAnswers>]>([
    ['with pets in the house', { company: true }],
    ['with a longer room', { along: 24 * FOOT }],
    ['with a shorter room', { along: 17 * FOOT }],
    ['with a wider room', { across: 17 * FOOT }],
    ['with the height of the shelf measured later', { support: { ...support, top: 1050 } }],
  ])('stands on it when the card is made again: %s', (_, change) => {
    expect(open({})).toEqual(['outside-opening', 'heat', 'direct-sun']);
    expect(open(change)).toEqual(['outside-opening', 'heat', 'direct-sun']);
  });

  it('does not stand on another shelf', () => {
    expect(open({ support: { ...support, square: '2,5' } })).toContain('support');
  });
});

describe('another time to close the house', () => {
  const closed = { ...made, visit: { ...made.visit, closedSince: '2026-11-28T19:30:00-05:00' } };
  const sunday = { closing: '2026-11-29T20:00:00-05:00' } as const;

  it('plans the placement anew where nobody has placed the kit, also when a closing is recorded', () => {
    const plan = again(closed, sunday);
    expect(plan.visit).toMatchObject({ start: '2026-11-30T08:00:00-05:00', startPlanned: true });
    // It is to be closed later than it was: since when is open again.
    expect(plan.visit.closedSince).toBeNull();
  });

  it('counts from the recorded closing where that one is answered', () => {
    const plan = again(closed, { closing: '2026-11-28T19:30:00-05:00' });
    // Closed for more than 12 h: at once, on the half hour.
    expect(plan.visit).toEqual({ ...closed.visit, start: '2026-11-29T12:00:00-05:00', startPlanned: true });
    const log: LogEntry = {
      detector: 'd1',
      serial: '7',
      placedBy: '',
      fetchedBy: '',
      sealed: null,
      tampering: 'unknown',
      note: '',
      photos: [],
      custody: [],
    };
    expect(again({ ...closed, log: [log] }, sunday).visit.start).toBe('2026-11-30T08:00:00-05:00');
  });

  it('does not count a recorded closing that has ended', () => {
    const opened = { ...closed, visit: { ...closed.visit, closedUntil: '2026-11-29T09:00:00-05:00' } };
    const plan = again(opened, { closing: '2026-11-28T19:30:00-05:00' });
    expect(plan.visit.start).toBe('2026-11-30T07:00:00-05:00');
  });

  it('changes nothing of a test that has begun', () => {
    expect(again(placed, sunday).visit).toEqual(placed.visit);
  });
});

describe('what was looked at', () => {
  const sun = describeCard(made).spot?.points.find(({ rule }) => rule === 'direct-sun');
  const looked = sun ? withLooked(made, levelOf(made)?.id ?? '', sun, NOW) : made;
  const isLooked = (plan: Plan) => levelOf(plan)?.lookedFor?.includes('direct-sun') ?? false;

  it('holds while the spot and the windows are the same, with who looked and when', () => {
    expect(isLooked(looked)).toBe(true);
    const plan = again(looked, { company: true });
    expect(isLooked(plan)).toBe(true);
    expect(levelOf(plan)?.lookedForBy).toEqual(expect.arrayContaining([...(levelOf(looked)?.lookedForBy ?? [])]));
  });

  it('does not hold for another spot, another height or another window', () => {
    expect(isLooked(again(looked, pit))).toBe(false);
    expect(isLooked(again(looked, { support: { kind: 'table', top: 700 } }))).toBe(false);
    const window = { kind: 'window', square: '-1,0' } as const;
    expect(isLooked(again(looked, { things: [...ANSWERED.things, window] }))).toBe(false);
  });

  it('is answered as the plan has it now: said or taken back in the full app', () => {
    const change = (lookedFor: readonly string[]): Plan => ({
      ...made,
      levels: made.levels.map((level) => ({ ...level, lookedFor })),
    });
    expect(answersNow(made)).toEqual(ANSWERED);
    expect(answersNow(change(['moving-air', 'sump']))?.none).toEqual(['moving-air', 'sump', 'washer-dryer']);
    expect(answersNow(change(['moving-air', 'sump', 'floor-drain', 'direct-sun']))?.none).toEqual(ANSWERED.none);
    expect(answersNow(emptyPlan())).toBeNull();
  });
});

describe('what was measured in the full app', () => {
  it('is an answer when the card is made again: the top that carries the kit', () => {
    const open = quickPlan(base, { ...ANSWERED, support: { kind: 'table', top: null } }, NOW);
    expect(answersNow(open)?.support).toEqual({ kind: 'table', top: null });
    const measured: Plan = {
      ...open,
      levels: open.levels.map((level) => ({
        ...level,
        objects: level.objects.map(({ topAnswered: _, ...object }) => ({ ...object, top: 700 })),
        detectors: level.detectors.map((detector) => ({ ...detector, base: 700 })),
      })),
    };
    const now = answersNow(measured);
    expect(now?.support).toEqual({ kind: 'table', top: 700 });
    const plan = quickPlan(measured, now ?? ANSWERED, NOW);
    expect(detectorsOf(plan)[0]?.base).toBe(700);
    expect(describeCard(plan).spot?.open.map(({ rule }) => rule)).not.toContain('height-band');
  });
});

describe('what was set in the full app', () => {
  const own = (rule: string, distance: number, note: string) => ({ rule, distance, note });
  const changed = (...overrides: readonly ReturnType<typeof own>[]): Plan => ({
    ...made,
    protocol: { ...made.protocol, overrides },
  });
  const leaflet = { ...ANSWERED.leaflet, distances: { heat: 6 * FOOT } };
  const copied = own('heat', 6 * FOOT, "The kit's leaflet");

  it('holds when the card is made again: distances with their notes, and working hours', () => {
    const wider = own('outside-wall', 2 * FOOT, 'Cold wall');
    expect(again(changed(wider), {}).protocol.overrides).toEqual([wider]);
    expect(again(changed(wider), { leaflet }).protocol.overrides).toEqual([wider, copied]);
    const practice = { days: [{ day: 'sat', from: '09:00', to: '12:00' }], daysOff: [] } as const;
    expect(again({ ...made, practice }, {}).practice).toEqual(practice);
  });

  it('gives way to a leaflet that asks for more, and not to one that asks for less', () => {
    expect(again(changed(own('heat', 5 * FOOT, 'Old stove')), { leaflet }).protocol.overrides).toEqual([copied]);
    const wider = own('heat', 8 * FOOT, 'Old stove');
    expect(again(changed(wider), { leaflet }).protocol.overrides).toEqual([wider]);
    // What the leaflet asked for before and no longer asks for goes.
    expect(again(changed(copied), {}).protocol.overrides).toEqual([]);
  });
});

describe('isDrawnOn(plan)', () => {
  it('tells a plan that was drawn on from one that its answers tell whole', () => {
    expect(isDrawnOn(made)).toBe(false);
    expect(isDrawnOn(placed)).toBe(false);
    const change = (part: object): Plan => ({ ...made, levels: made.levels.map((level) => ({ ...level, ...part })) });
    expect(isDrawnOn(change({ lookedFor: [] }))).toBe(false);
    expect(isDrawnOn(change({ openings: [] }))).toBe(true);
    // That is an answer.
    expect(isDrawnOn(change({ ceiling: 2300, ceilingAnswered: true }))).toBe(false);
    expect(answersNow(change({ ceiling: 2300, ceilingAnswered: true }))?.ceiling).toBe(2300);
    const [table] = levelOf(made)?.objects ?? [];
    expect(isDrawnOn(change({ objects: [table, { ...table, id: 'x1', name: 'Chair' }] }))).toBe(true);
  });
});
