import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Level, Plan } from '../../../../geometry/plan/model.ts';
import type { Condition, Visit } from '../../../../geometry/plan/test-record.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { withHandOver, withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { evaluateResults } from '../../../../src/protocol/results/evaluate-results.ts';
import { NEXT_STEPS } from '../../../../src/protocol/results/next-steps.ts';
import { testHeadline } from '../../../../src/protocol/validity/headline.ts';
import { VALIDITY_HEADLINE, type Validity } from '../../../../src/protocol/validity/validity.ts';
import { drawDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../../src/report/draw-sheets.ts';
import { testStateOf } from '../../../../src/state/test-state.ts';
import { callCli } from '../../../helpers/call-cli.ts';
import { someOf } from '../../../helpers/how-many.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';
import { EVERYTHING, GOOD_VISIT, validTestPlan } from '../../../helpers/valid-test-plan.ts';

interface Cause {
  readonly name: string;
  readonly standing: Exclude<Validity, 'holds'>;
  readonly apply: (plan: Plan) => Plan;
}
const onLevel = (plan: Plan, change: (level: Level) => Partial<Level>): Plan => ({
  ...plan,
  levels: plan.levels.map((level) => ({ ...level, ...change(level) })),
});
const visited = (plan: Plan, visit: Partial<Visit>): Plan => ({ ...plan, visit: { ...plan.visit, ...visit } });
const answered = (plan: Plan, item: string, state: Condition['state']): Plan => ({
  ...plan,
  conditions: plan.conditions.map((each) => (each.item === item ? { ...each, state } : each)),
});
const cause = (standing: Cause['standing'], name: string, apply: Cause['apply']): Cause => ({ name, standing, apply });
const sumpNear = {
  id: 'f1',
  kind: 'sump-pit',
  name: '',
  shape: { circle: { center: [4600, 3000], radius: 228.6 } },
  bottom: 0,
  top: 0,
  stream: null,
} as const;

/** What takes a result, or leaves it open: each with the standing that it has by itself. */
const CAUSES: readonly Cause[] = [
  cause('not-evaluated', 'in a kitchen', (plan) =>
    onLevel(plan, ({ rooms }) => ({ rooms: rooms.map((room) => ({ ...room, use: 'kitchen' as const })) })),
  ),
  cause('not-evaluated', 'beside a sump pit', (plan) =>
    onLevel(plan, ({ fixtures }) => ({ fixtures: [...fixtures, sumpNear] })),
  ),
  cause('not-evaluated', 'on a level that is not lived in', (plan) => onLevel(plan, () => ({ living: 'no' }))),
  // 32 Ill. Adm. Code 422.130(b)(1): 48 h at least; the kit's own window.
  cause('not-evaluated', 'a minute short of 48 h', (plan) => visited(plan, { end: '2026-03-09T18:59:00-04:00' })),
  cause('not-evaluated', "past the kit's window", (plan) => visited(plan, { end: '2026-03-11T19:01:00-04:00' })),
  cause('not-evaluated', 'closed too late', (plan) => visited(plan, { closedSince: '2026-03-07T06:01:00-05:00' })),
  cause('not-evaluated', 'windows open', (plan) => answered(plan, 'windows-closed', 'broken')),
  cause('not-evaluated', 'tampering in the log', (plan) => ({
    ...plan,
    log: [
      {
        detector: 'L1d1',
        serial: '',
        placedBy: '',
        fetchedBy: '',
        sealed: null,
        tampering: 'seen',
        note: '',
        photos: [],
        custody: [],
      },
    ],
  })),
  // Chain of custody kept with the result: ANSI/AARST MAH-2019, Exh. 4; that a broken one leaves a test open is our reading.
  cause('unknown', 'transferred by somebody who did not have it', (plan) =>
    withHandOver(withLogEntry(plan, 'L1d1', { fetchedBy: 'Ona Fell' }), 'L1d1', {
      at: '2026-03-10T12:00:00-04:00',
      from: 'Bo Reed',
      to: 'Mail',
      note: '',
    }),
  ),
  // 32 Ill. Adm. Code 422, Appendix B; ANSI/AARST MAH-2019, 2.5.
  cause('not-evaluated', 'by itself in a property transfer', (plan) => {
    const { detectors = [] } = plan.levels[0] ?? {};
    const one = onLevel(plan, () => ({ detectors: detectors.slice(0, 1).map((each) => ({ ...each, pair: null })) }));
    const readings = plan.readings.filter(({ detector }) => detector === 'L1d1');
    return { ...one, readings, site: { ...plan.site, purpose: 'property-transfer' } };
  }),
  cause('unknown', 'no label on the room', (plan) => onLevel(plan, () => ({ rooms: [] }))),
  cause('unknown', 'nobody looked for a sump', (plan) =>
    onLevel(plan, () => ({ lookedFor: EVERYTHING.filter((rule) => rule !== 'sump' && rule !== 'direct-sun') })),
  ),
  cause('unknown', 'the sun not vouched for', (plan) =>
    onLevel(plan, ({ lookedFor = [] }) => ({
      lookedFor: lookedFor.filter((rule) => rule !== 'direct-sun'),
      openings: [
        { id: 'o1', wall: 'L1w1', kind: 'window', offset: 1000, width: 900, bottom: 1200, top: 2000 } as const,
      ],
    })),
  ),
  cause('unknown', 'nothing carries it', (plan) =>
    onLevel(plan, ({ detectors }) => ({ detectors: detectors.map((each) => ({ ...each, support: null })) })),
  ),
  cause('unknown', 'not picked up', (plan) => visited(plan, { end: null })),
  cause('unknown', 'picked up as planned only', (plan) => visited(plan, { end: null, plannedEnd: GOOD_VISIT.end })),
  cause('unknown', 'closed since nobody knows when', (plan) => visited(plan, { closedSince: null })),
  cause('unknown', 'doors not answered', (plan) => answered(plan, 'doors-closed', 'unknown')),
  cause('unknown', 'a fire in the fireplace', (plan) => answered(plan, 'fireplaces-off', 'broken')),
  cause('unknown', 'too late at the laboratory', (plan) => visited(plan, { received: '2026-03-20T09:00:00-04:00' })),
  cause('unknown', 'two results of one detector', (plan) => ({
    ...plan,
    readings: [...plan.readings, { detector: 'L1d1', value: 1.3, unit: 'pCi/L' }],
  })),
];

const CLEAR_STEPS = Object.values(NEXT_STEPS).flatMap(({ id, noActionPhrases }) =>
  noActionPhrases.length > 0 ? [id as string] : [],
);

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-standing-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The standing as each of them tells it. */
async function toldBy(plan: Plan) {
  const path = join(folder, 'one.plan.json');
  writeFileSync(path, writePlan(plan));
  const { code, out } = await callCli('readings', path, '--json');
  const { test, reasons, sets, house } = JSON.parse(out);
  const state = testStateOf(plan);
  const log = drawDocument('log', { plan, paper: 'letter', date: '2026-03-20' });
  const texts = log.flatMap((svg) => sheetTexts(svg).map(({ text }) => text)).join(' ');
  return {
    code,
    reasons: reasons as readonly string[],
    sets: sets as readonly { standing: Validity; step: string; nextStep: string }[],
    house: house as string,
    readings: test as Validity,
    read: evaluateResults(plan, state).map((set) => set.state.validity),
    headline: testHeadline(plan, state).head,
    log: Object.values(VALIDITY_HEADLINE).filter((head) =>
      texts.includes(`Validity of the test The test: ${head.toLowerCase()}.`),
    ),
  };
}

async function standsEverywhere(plan: Plan, standing: Validity) {
  const told = await toldBy(plan);
  const head = VALIDITY_HEADLINE[standing];
  expect([told.readings, told.headline, told.log, told.read, told.sets.map((set) => set.standing)]).toEqual([
    standing,
    head,
    [head],
    told.read.map(() => standing),
    told.read.map(() => standing),
  ]);
  expect(told.read.length).toBeGreaterThan(0);
  expect(told.code).toBe(standing === 'holds' ? 0 : 1);
  for (const { step, nextStep } of standing === 'holds' ? [] : told.sets) {
    expect(CLEAR_STEPS).not.toContain(step);
    // The step names what is to be mended or repeated.
    expect(told.reasons.some((reason) => nextStep.includes(reason))).toBe(true);
  }
  if (standing !== 'holds') expect(told.house).toBe('unknown');
}

describe('the standing of a test, told everywhere alike', () => {
  it('holds without a cause', () => standsEverywhere(validTestPlan(), 'holds'));

  it.each(CAUSES.map((each) => [each.name, each] as const))('%s', (_, { apply, standing }) =>
    standsEverywhere(apply(validTestPlan()), standing),
  );

  it.each(CAUSES.map((each) => [each.name, each] as const))(
    '%s, on the sheet and in check and timing',
    async (_, cause) => {
      const plan = cause.apply(validTestPlan());
      const words = `The test: ${VALIDITY_HEADLINE[cause.standing].toLowerCase()}.`;
      const [sheet = ''] = drawSheets({ plan, levelId: 'L1', paper: 'letter', date: '2026-03-20' });
      expect(sheetTexts(sheet).map(({ text }) => text)).toContain(words);
      const path = join(folder, 'one.plan.json');
      writeFileSync(path, writePlan(plan));
      for (const command of ['check', 'timing']) {
        expect((await callCli(command, path)).out).toContain(words);
        expect(JSON.parse((await callCli(command, path, '--json')).out).test).toBe(cause.standing);
      }
    },
  );

  it.each(CAUSES.map((each, i) => [each.name, each, CAUSES.slice(i + 1)] as const))(
    '%s, with each other cause',
    async (_, one, others) => {
      for (const other of someOf(others, 4)) {
        const worst = [one, other].some(({ standing }) => standing === 'not-evaluated') ? 'not-evaluated' : 'unknown';
        // Two causes that change the same field are one: the later one is what the plan has.
        const plan = other.apply(one.apply(validTestPlan()));
        const undone = one.apply(plan) !== plan && same(one, other);
        await standsEverywhere(plan, undone ? other.standing : worst);
      }
    },
    120_000,
  );
});

/** Causes of one field of a plan: the second takes the place of the first. */
const FIELDS: readonly (readonly string[])[] = [
  ['a minute short of 48 h', "past the kit's window", 'not picked up', 'picked up as planned only'],
  ['closed too late', 'closed since nobody knows when'],
  ['in a kitchen', 'no label on the room'],
];
const same = (one: Cause, other: Cause): boolean =>
  FIELDS.some((names) => names.includes(one.name) && names.includes(other.name));
