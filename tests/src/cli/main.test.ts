import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callCli as call } from '../../helpers/call-cli.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-cli-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

interface PlanJson {
  protocol: { overrides: object[] };
  levels: { detectors: { at: number[]; pair: string | null }[]; rooms: object[] }[];
}

/** The plain basement with a change, as a file. */
function changed(name: string, change: (plan: PlanJson) => void): string {
  const plan = JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as PlanJson;
  change(plan);
  const file = join(folder, `${name}.plan.json`);
  writeFileSync(file, JSON.stringify(plan));
  return file;
}

const LEVEL_KEYS = ['rule', 'subject', 'required', 'measured', 'margin', 'verdict', 'source'];

describe('stillspot check', () => {
  it('ends with 0 and prints one JSON document when every detector is clear', async () => {
    const { code, out, err } = await call('check', 'samples/01-plain-basement.plan.json', '--json');
    const { levels } = JSON.parse(out);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(levels[0].detectors.map(({ id, verdict }: { id: string; verdict: string }) => [id, verdict])).toEqual([
      ['d1', 'clear'],
      ['d2', 'clear'],
    ]);
    for (const check of levels[0].detectors[0].checks)
      expect(Object.keys(check)).toEqual(expect.arrayContaining(LEVEL_KEYS));
  });

  it('carries what the drawing leaves open, what a detector stands in, what was not run, and how each source was come by', async () => {
    const file = changed('entered', ({ levels: [level] }) => {
      const [first] = level?.detectors ?? [];
      // The water heater of the sample: 10 in about (290, 142) in.
      if (first) first.at = [290 * 25.4, 142 * 25.4];
      level?.rooms.pop();
    });
    const [level] = JSON.parse((await call('check', file, '--json')).out).levels;
    expect(level.notices).toMatchObject([{ kind: 'unlabelled-room' }]);
    const [first, second] = level.detectors;
    expect(first.entered).toEqual(['f2']);
    expect(second.entered).toEqual([]);
    expect(second.open).toEqual(['direct-sun']);
    const drain = second.checks.find(({ rule }: { rule: string }) => rule === 'floor-drain');
    expect(drain.sources).toEqual([{ cite: 'common practice, no published source', mark: 'common-practice' }]);
    expect(drain.source).toBe('common practice, no published source');
  });

  it('tells on standard error which keys of a file are not used, and prints the same document', async () => {
    const file = changed('own-keys', (plan) => Object.assign(plan, { 'own-note': 'kept' }));
    const { code, out, err } = await call('check', file, '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out).levels).toHaveLength(1);
    expect(err).toContain('The file has a key that Stillspot does not know: "/own-note". It is kept and not used.');
  });

  it('prints no sign that a terminal acts on, whatever a refused file holds, and lists 200 problems of many', async () => {
    const file = changed('hostile', (plan) => Object.assign(plan, { format: '\u001b[2J\u009b31m\u202eplan' }));
    const { code, err } = await call('check', file);
    expect(code).toBe(2);
    expect(err).toContain('"[2J31mplan"');
    const many = changed('many', ({ levels: [level] }) => {
      if (level) level.rooms = Array.from({ length: 300 }, () => ({}));
    });
    const refusal = await call('check', many);
    expect(refusal.err.trim().split('\n')).toHaveLength(202);
    expect(refusal.err).toContain('and 1000 more');
  });

  it('ends with 1 when a detector is blocked: here it stands in the utility half of the basement', async () => {
    const file = changed('blocked', ({ levels: [level] }) => {
      const [first] = level?.detectors ?? [];
      if (first) first.at = [10000, 3000];
    });
    const { code, out } = await call('check', file, '--json');
    const [detector] = JSON.parse(out).levels[0].detectors;
    expect({ code, verdict: detector.verdict }).toEqual({ code: 1, verdict: 'blocked' });
  });

  it('ends with 1 when it cannot be decided: the rooms have no labels', async () => {
    const file = changed('unknown', ({ levels: [level] }) => level?.rooms.splice(0));
    const { code, out } = await call('check', file);
    expect(code).toBe(1);
    expect(out).toContain('A1: unknown.');
    expect(out).toContain('The room has no label');
  });

  it('says a check that was not run beside the verdict, without lowering it', async () => {
    const { code, out } = await call('check', 'samples/01-plain-basement.plan.json');
    expect(code).toBe(0);
    expect(out).toMatch(/A1: clear of what is drawn\./);
    expect(out).toMatch(/not run {2}Direct sun: /);
  });

  it('says nothing of an override that is the published distance', async () => {
    const file = changed('the-same', ({ protocol }) => {
      protocol.overrides = [{ rule: 'sump', distance: 2133.6, note: '' }];
    });
    expect((await call('check', file)).out).not.toMatch(/Tightened|instead of the published/);
  });

  it('says loudly that a rule is loosened', async () => {
    const file = changed('loosened', ({ protocol }) => {
      protocol.overrides = [{ rule: 'sump', distance: 1000, note: 'sealed lid' }];
    });
    expect((await call('check', file)).out).toContain('LOOSENED Sump pit');
    expect(JSON.parse((await call('check', file, '--json')).out).overrides).toEqual([
      { rule: 'sump', distance: 1000, note: 'sealed lid' },
    ]);
  });

  it('ends every text with the cautions', async () => {
    const { out } = await call('check', 'samples/01-plain-basement.plan.json');
    expect(out).toContain('Local codes and the instructions of the kit come first.');
    expect(out).toContain(
      'A certified or licensed professional decides whether a result may be used, in your own home too.',
    );
  });
});

describe('stillspot area', () => {
  it('gives 0 m² at a height outside the breathing zone (25 Pa. Code 240.310(a)(1): 20 in to 6 ft)', async () => {
    const low = JSON.parse((await call('area', 'samples/01-plain-basement.plan.json', '--json', '--base', '507')).out);
    const least = JSON.parse(
      (await call('area', 'samples/01-plain-basement.plan.json', '--json', '--base', '508')).out,
    );
    expect(low.levels[0].rooms[0].sittableArea).toBe(0);
    expect(least.levels[0].rooms[0].sittableArea).toBeGreaterThan(10);
  });

  it('gives null for the id and the spot of a room without a label', async () => {
    const file = changed('unlabelled', ({ levels: [level] }) => level?.rooms.splice(0));
    const [room] = JSON.parse((await call('area', file, '--json')).out).levels[0].rooms;
    expect({ id: room.id, sittableArea: room.sittableArea }).toEqual({ id: null, sittableArea: null });
    expect(room.floorArea).toBeGreaterThan(10);
  });
});

describe('a call that is not usable ends with 2 and writes nothing to standard output', () => {
  it.each([
    { why: 'no command', argv: [], says: 'No command is given.' },
    { why: 'an unknown command', argv: ['chek', 'x'], says: '"chek" is not a command.' },
    { why: 'no file', argv: ['check'], says: 'No file is named.' },
    { why: 'two files', argv: ['check', 'a', 'b'], says: 'check takes one file, got 2.' },
    { why: 'a file that is not there', argv: ['check', 'nowhere.plan.json'], says: 'there is no such file' },
    { why: 'a folder', argv: ['check', 'samples'], says: 'this is a folder' },
    { why: 'an unknown option', argv: ['check', 'x', '--frob'], says: '--frob' },
    {
      why: 'a height that is no number',
      argv: ['area', 'samples/01-plain-basement.plan.json', '--base', 'desk'],
      says: '"desk" is not a length',
    },
    {
      why: 'a negative height',
      argv: ['area', 'samples/01-plain-basement.plan.json', '--base=-1'],
      says: '"-1" is not a length',
    },
    {
      why: 'a height in a notation of programmers',
      argv: ['area', 'samples/01-plain-basement.plan.json', '--base', '0x300'],
      says: '"0x300" is not a length',
    },
  ])('$why', async ({ argv, says }) => {
    const { code, out, err } = await call(...argv);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });

  it('a refused file, with every problem and its place', async () => {
    const file = changed('broken', ({ levels: [level] }) => {
      const [first, second] = level?.detectors ?? [];
      if (first) first.at = [1];
      if (second) second.pair = 7 as unknown as string;
    });
    const { code, out, err } = await call('check', file, '--json');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('/levels/0/detectors/0/at');
    expect(err).toContain('/levels/0/detectors/1/pair');
  });
});
