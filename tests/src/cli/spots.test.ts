import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan, XY } from '../../../geometry/plan/model.ts';
import { callCli as call } from '../../helpers/call-cli.ts';
import { leastMargin } from '../../helpers/least-margin.ts';
import { samplePlan } from '../../helpers/sample-files.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-spots-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

interface Printed {
  readonly levels: readonly { readonly id: string; readonly spots: readonly PrintedSpot[] }[];
}
interface PrintedSpot {
  readonly at: XY;
  readonly room: string | null;
  readonly margin: number;
}

const BASEMENT = 'samples/01-plain-basement.plan.json';

async function printed(...argv: string[]): Promise<Printed> {
  const { code, out, err } = await call('spots', ...argv, '--json');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out) as Printed;
}

/** The basement with a change, as a file. */
function changed(name: string, change: (level: { detectors: object[]; rooms: object[] }) => void): string {
  const plan = JSON.parse(readFileSync(BASEMENT, 'utf8'));
  change(plan.levels[0]);
  const file = join(folder, `${name}.plan.json`);
  writeFileSync(file, JSON.stringify(plan));
  return file;
}

describe('stillspot spots', () => {
  it('says where nobody has measured how high what carries a detector is', async () => {
    const table = {
      id: 'table',
      name: 'Long table',
      shape: { box: { center: [4000, 3000], width: 8000, depth: 6000, turn: 0 } },
      bottom: 0,
      top: 762,
    };
    const told = async (name: string, part: object) => {
      const file = changed(name, (level) => void Object.assign(level, { objects: [{ ...table, ...part }] }));
      return (await call('spots', file, '--count', '1')).out;
    };
    const measured = await told('measured', {});
    expect(measured).toContain('  1. ');
    expect(measured).not.toContain('assumed');
    expect(await told('assumed', { topAnswered: false })).toMatch(
      / {2}1\. .* The height of the long table is not measured: 2 ft 6 in is assumed\.\n/,
    );
  });

  it('prints every level with its spots, the largest margin first, each the margin that the checker measures there', async () => {
    const { levels } = await printed('samples/02-split-level.plan.json', '--count', '3');
    const plan: Plan = samplePlan('02-split-level');
    expect(levels.map(({ id }) => id)).toEqual(plan.levels.map(({ id }) => id));
    // L0 is a crawlspace that nobody may test in; on the others the rooms are large enough for three.
    expect(levels.map(({ spots }) => spots.length)).toEqual([0, 3, 3, 3]);
    for (const { id, spots } of levels) {
      const level = plan.levels.find((one) => one.id === id) as Level;
      const allowed = level.rooms.filter(
        ({ use }) => !['laundry', 'utility', 'kitchen', 'hall', 'bathroom'].includes(use),
      );
      for (const { at, room, margin } of spots) {
        expect(allowed.map((one) => one.id)).toContain(room);
        const measured = leastMargin(plan, buildLevel(level), { base: 762, radius: 50.8, tall: 25.4 }, at);
        expect(margin).toBeCloseTo(measured, 6);
      }
      const margins = spots.map(({ margin }) => margin);
      expect(margins).toEqual([...margins].sort((a, b) => b - a));
    }
  });

  it('gives five spots when no count is named', async () => {
    const [level] = (await printed(BASEMENT)).levels;
    expect(level?.spots).toHaveLength(5);
  });

  it('with --pair gives two places each, rim to rim 4 to 8 in', async () => {
    const [level] = (await printed(BASEMENT, '--pair', '--count', '2')).levels;
    expect(level?.spots).toHaveLength(2);
    for (const { at } of level?.spots ?? []) {
      const [[ax, ay], [bx, by]] = at as unknown as readonly [XY, XY];
      const gap = Math.hypot(bx - ax, by - ay) - 2 * 50.8;
      expect(gap).toBeGreaterThan(4 * 25.4 - 1e-6);
      expect(gap).toBeLessThan(8 * 25.4 + 1e-6);
    }
  });

  it('takes the size of the first detector: a wider one has less to spare by as much as it is wider', async () => {
    const wide = changed('wide', ({ detectors: [first] }) => Object.assign(first ?? {}, { radius: 100.8 }));
    const [[usual], [broad]] = [
      (await printed(BASEMENT)).levels[0]?.spots ?? [],
      (await printed(wide)).levels[0]?.spots ?? [],
    ];
    const lost = (usual?.margin ?? 0) - (broad?.margin ?? 0);
    // Each within 1.6 of the best.
    expect(lost).toBeGreaterThan(50 - 1.7);
    expect(lost).toBeLessThan(50 + 1.7);
  });

  it.each([
    { why: 'below the breathing zone', base: '507', spots: 0 },
    { why: 'at its lower limit of 20 in', base: '508', spots: 5 },
    // 72 in less the height of the first detector, an inch.
    { why: 'at its upper limit', base: '1803.4', spots: 5 },
    { why: 'above it', base: '1803.6', spots: 0 },
  ])('gives $spots spots $why', async ({ base, spots }) => {
    expect((await printed(BASEMENT, '--base', base)).levels[0]?.spots).toHaveLength(spots);
  });

  it('gives none in rooms without a label', async () => {
    const file = changed('unlabelled', ({ rooms }) => rooms.splice(0));
    expect((await printed(file)).levels[0]?.spots).toEqual([]);
    expect((await call('spots', file)).out).toContain('No place for a detector at this height.');
  });

  it('says in words what limits a spot, and the cautions', async () => {
    const { out, code } = await call('spots', BASEMENT, '--count', '1');
    expect(code).toBe(0);
    expect(out).toMatch(/1\. Family room at \d+, \d+: [\d/ftin ]+ to spare at /);
    expect(out).not.toContain('2. ');
    expect(out).toContain('Local codes and the instructions of the kit come first.');
  });

  it.each([
    ['--count', '0'],
    ['--count', '2.5'],
    ['--count', 'many'],
    ['--base', 'desk'],
  ])('refuses %s %s with 2 and nothing on standard output', async (option, value) => {
    const { code, out, err } = await call('spots', BASEMENT, option, value);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(`${option} "${value}"`);
  });
});
