import { describe, expect, it } from 'vitest';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { withAgreedVerdict } from '../../../geometry/recheck/published-report.ts';
import type { Opinion, Row, Verdict } from '../../../geometry/recheck/types.ts';

/* When two opinions agree: the same verdict for every rule, and every least distance within 0.5 mm. */

function row(rule: string, measured: number | null, verdict: Verdict, rest: Partial<Row> = {}): Row {
  return { rule, subject: 'w1', measured, required: 304.8, verdict, notRun: false, ...rest };
}

function opinion(verdict: Verdict, ...checks: readonly Row[]): Opinion {
  return { levels: [{ id: 'L1', detectors: [{ id: 'd1', verdict, checks }] }] };
}

const how = (one: Opinion, two: Opinion) =>
  compareOpinions(one, { ok: true, ...two })[0]?.detectors[0]?.computed.how ?? 'nothing';

const CLEAR = opinion('clear', row('outside-wall', 400, 'clear'));

describe('compareOpinions(first, second)', () => {
  it.each([
    ['the same figure', opinion('clear', row('outside-wall', 400, 'clear')), 'twice'],
    ['a figure half a millimeter off', opinion('clear', row('outside-wall', 400.5, 'clear')), 'twice'],
    ['a figure farther off', opinion('clear', row('outside-wall', 400.6, 'clear')), 'differs'],
    ['no figure', opinion('clear', row('outside-wall', null, 'clear')), 'differs'],
    ['another verdict', opinion('tight', row('outside-wall', 400, 'tight')), 'differs'],
    ['a rule more', opinion('clear', row('outside-wall', 400, 'clear'), row('sump', 9000, 'clear')), 'differs'],
    ['a rule less', opinion('clear'), 'differs'],
    ['a rule that was not run', opinion('clear', row('outside-wall', 400, 'unknown', { notRun: true })), 'differs'],
    ['another verdict of the whole', opinion('blocked', row('outside-wall', 400, 'clear')), 'differs'],
  ])('%s: %3$s', (_, second, expected) => {
    expect(how(CLEAR, second)).toBe(expected);
    expect(how(second, CLEAR)).toBe(expected);
  });

  it('sun that the first measured and the second did not run is not computed twice, nor the other way round', () => {
    const measured = opinion('clear', row('direct-sun', 2000, 'clear'));
    const notRun = opinion('clear', row('direct-sun', null, 'unknown', { notRun: true }));
    expect(how(measured, notRun)).toBe('differs');
    expect(how(notRun, measured)).toBe('differs');
  });

  it('no figure is not a figure of nearly 0', () => {
    const [none, small] = [null, 0.2].map((measured) => opinion('blocked', row('outside-wall', measured, 'blocked')));
    if (!none || !small) throw new Error('two opinions');
    expect(how(none, small)).toBe('differs');
    expect(how(small, none)).toBe('differs');
  });

  it('a rule that was not run is neither clear nor missing', () => {
    const notRun = row('sump', null, 'unknown', { notRun: true });
    const [open, none, clear] = [[notRun], [], [row('sump', null, 'clear')]].map((rows) => opinion('clear', ...rows));
    if (!open || !none || !clear) throw new Error('three opinions');
    expect(how(open, open)).toBe('twice');
    for (const other of [none, clear]) {
      expect(how(open, other)).toBe('differs');
      expect(how(other, open)).toBe('differs');
    }
    expect(how(none, clear)).toBe('differs');
  });

  it('of a rule with a row that was not run, the figure is that of the rows that were', () => {
    const [run, notRun] = [row('sump', 9000, 'clear'), row('sump', null, 'unknown', { notRun: true, subject: 's2' })];
    expect(how(opinion('clear', run, notRun), opinion('clear', run))).toBe('twice');
    expect(how(opinion('clear', run, notRun), opinion('clear', notRun))).toBe('differs');
  });

  it('of a detector that the second did not look at says that it was computed once', () => {
    const other: Opinion = {
      levels: [{ id: 'L1', detectors: [{ id: 'd2', verdict: 'clear', checks: [row('outside-wall', 400, 'clear')] }] }],
    };
    expect(how(CLEAR, other)).toBe('once');
    expect(how(CLEAR, { levels: [] })).toBe('once');
    expect(how(CLEAR, { levels: [{ id: 'L1', detectors: [] }] })).toBe('once');
  });

  it('of the cause of "once" says that the second did not look at it', () => {
    const [level] = compareOpinions(CLEAR, { ok: true, levels: [] });
    expect(level?.detectors[0]?.computed).toEqual({ how: 'once', cause: 'it did not look at this detector' });
  });

  it('takes clear for tight within the tape tolerance that it is given, which is none without one', () => {
    const [clear, tight] = (['clear', 'tight'] as const).map((verdict) =>
      opinion(verdict, row('outside-wall', 305.8, verdict)),
    );
    if (!clear || !tight) throw new Error('two opinions');
    const told = (tape?: number) => compareOpinions(clear, { ok: true, ...tight }, tape)[0]?.detectors[0]?.computed.how;
    expect([told(), told(0), told(1), told(25.4)]).toEqual(['differs', 'differs', 'twice', 'differs']);
  });

  it('takes the sun of the first, which is larger on purpose, and all else of the second', () => {
    const sun = (measured: number, verdict: Verdict) => row('direct-sun', measured, verdict, { required: 1219.2 });
    const first = opinion('blocked', sun(1200, 'blocked'), row('outside-wall', 400, 'clear'));
    const second = (wall: number) => opinion('clear', sun(1300, 'clear'), row('outside-wall', wall, 'clear'));
    expect(how(first, second(400))).toBe('twice');
    expect(how(first, second(900))).toBe('differs');
    // Nearly as near, on the other side of the limit; and nearer than the first allows.
    const edge = (measured: number, verdict: Verdict) => opinion(verdict, sun(measured, verdict));
    expect(how(edge(1218.9, 'blocked'), edge(1219.2, 'tight'))).toBe('twice');
    expect(how(edge(1219.2, 'tight'), edge(1218.6, 'blocked'))).toBe('differs');
  });

  it('a length of a rule that was not run excuses no other verdict', () => {
    const notRun = row('heat', 1219.1, 'unknown', { required: 1219.2, notRun: true });
    expect(how(opinion('clear', notRun), opinion('blocked', notRun))).toBe('differs');
  });

  it('asks for the least distance of a rule, not for every subject', () => {
    const all = opinion(
      'clear',
      row('outside-wall', 400, 'clear'),
      row('outside-wall', 900, 'clear', { subject: 'w2' }),
    );
    expect(how(CLEAR, all)).toBe('twice');
  });

  it('passes over the farther limit of two, which the first does not tell', () => {
    const [least, most] = [
      row('height-band', 762, 'clear', { required: 508 }),
      row('height-band', 787, 'clear', { required: 1828.8 }),
    ];
    expect(how(opinion('clear', least), opinion('clear', least, most))).toBe('twice');
    expect(how(opinion('blocked', least), opinion('blocked', least, { ...most, verdict: 'blocked' }))).toBe('differs');
  });

  it('leaves a length that lies on its limit to rounding, and no other', () => {
    const [met, missed] = [
      row('heat', 1219.1, 'tight', { required: 1219.2 }),
      row('heat', 1219.1, 'blocked', { required: 1219.2 }),
    ];
    expect(how(opinion('tight', met), opinion('blocked', missed))).toBe('twice');
    const inside = row('heat', 0, 'tight', { required: 0 });
    expect(how(opinion('tight', inside), opinion('blocked', { ...inside, verdict: 'blocked' }))).toBe('differs');
  });

  it('says "once" with the cause where the second gave no answer', () => {
    const [level] = compareOpinions(CLEAR, { ok: false, cause: 'a wall has no end' });
    expect(level?.detectors).toEqual([{ id: 'd1', computed: { how: 'once', cause: 'a wall has no end' } }]);
  });
});

describe('settled(report, computed)', () => {
  it('makes the verdict unknown where the two differ, a blocked one too, and leaves it else', () => {
    const differs = { how: 'differs', first: 'blocked', second: 'blocked', rules: [] } as const;
    expect(withAgreedVerdict({ verdict: 'blocked' }, differs)).toEqual({ verdict: 'unknown' });
    expect(withAgreedVerdict({ verdict: 'clear' }, { how: 'twice' })).toEqual({ verdict: 'clear' });
    expect(withAgreedVerdict({ verdict: 'clear' }, { how: 'once', cause: '' })).toEqual({ verdict: 'clear' });
    expect(withAgreedVerdict({ verdict: 'clear' }, null)).toEqual({ verdict: 'clear' });
  });
});
