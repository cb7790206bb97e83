import { describe, expect, it } from 'vitest';
import { levelBar } from '../../../geometry/check/level.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { withLogEntry } from '../../../src/protocol/custody/log-entries.ts';
import { drawSheet, drawSheets, fittingOrientation } from '../../../src/report/draw-sheets.ts';
import { PAPERS, sizeOfPage } from '../../../src/report/paper.ts';
import { measuredLines } from '../../../src/report/paper-labels.ts';
import { subjectMatter } from '../../../src/report/subject-matter.ts';
import { detectorAt, drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';
import { samplePlan } from '../../helpers/sample-files.ts';
import { sheetTexts } from '../../helpers/sheet-texts.ts';

const DATE = '2026-11-25';
const wordsOf = (svg: string) =>
  sheetTexts(svg)
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ');
const firstSheet = (plan: Plan) => wordsOf(drawSheet({ plan, levelId: 'L1', paper: 'letter', date: DATE }));

describe('the marked-up plan of a finished test', () => {
  const words = firstSheet(samplePlan('06-sale-report'));

  it.each([
    ['the scale', 'Scale 3/16 in = 1 ft (1:64)'],
    ['the height of the ceiling', 'Ceiling 7 ft 6 in above the floor'],
    ['names and areas of rooms', 'Family room 456 sq ft'],
    ['the length of the whole house', '31 ft 4 in'],
    // The window begins 5 ft from the corner of the room and is 3 ft wide.
    ['what sets out an opening', '5 ft'],
    // From 3556 to the face at 7010.4 mm, less a radius of 2 in.
    ['a distance from a wall', 'south wall 11 ft 2 in'],
    ['the height of a detector', 'Underside 2 ft 6 in above the floor, on the table'],
    ['the serial number', 'Serial C4-118203'],
    ['when the detectors were placed', 'Detectors placed: Tue, Oct 6, 2026, 9:00 am'],
    ['when they were picked up', 'Picked up: Fri, Oct 9, 2026, 8:30 am'],
    ['who drew it', 'Drawn by Ines Calloway'],
    ['when it was drawn', 'October 5, 2026'],
    ['the verdict', 'A1 clear'],
    ['the tolerance of the tape', 'Tape tolerance 1/2 in'],
    ['the cautions', 'Local codes and the instructions of the kit come first.'],
  ])('has %s', (_, text) => {
    expect(words).toContain(text);
  });

  it('draws the tape to the wall that the words name', () => {
    // To the east wall from A2, the nearer of the pair.
    expect(words).toContain('8 ft 10 1/4 in');
    expect(words).toContain('11 ft 2 in');
  });
});

describe('the marked-up plan of a level that is not the one to test', () => {
  // The storey above the lived-in basement: ANSI/AARST MAH-2019, 3.1.1 and 3.1.2.
  const plan = samplePlan('02-split-level');
  const barred = plan.levels.filter((level) => levelBar(plan, level) !== '');

  it.each(barred.map(({ id }) => id))('shows no allowed area on %s', (levelId) => {
    const sheet = wordsOf(drawSheet({ plan, levelId, paper: 'letter', date: DATE }));
    expect(sheet).toContain('Not the level to test');
    expect(sheet).toContain('No allowed area');
    expect(sheet).not.toContain('Allowed area (white)');
    expect(subjectMatter(plan, levelId).region.rooms.filter(({ barred: why }) => !why)).toEqual([]);
  });

  it('is tried on more than none', () => expect(barred.length).toBeGreaterThan(0));
});

describe('the marked-up plan of a crowded cellar', () => {
  const words = firstSheet(samplePlan('03-crowded-utility'));

  it('has overrides, what was not run, and the distance of every rule that is not met', () => {
    for (const text of ['LOOSENED: Floor drain: 2 ft', 'Tightened: Sump pit: 10 ft', 'Not run', 'Tape tolerance'])
      expect(words).toContain(text);
    expect(words).toContain('5 ft 8 1/2 in, needs 10 ft');
  });

  it('never invents who drew it, a time or a serial number', () => {
    expect(words).toContain('Drawn by not recorded');
    expect(words).toContain('Detectors placed: not recorded. Picked up: not recorded.');
    const all = drawSheets({ plan: samplePlan('03-crowded-utility'), levelId: 'L1', paper: 'letter', date: DATE });
    expect(all.map(wordsOf).join(' ')).toContain('Serial not recorded.');
  });
});

describe('distances near a limit', () => {
  /** A detector 3 ft 4 in from the drain, where 3 ft is the limit, and some 9 ft from the outside walls, where it is 1 ft. */
  const level = drawn(loop('w', rectangle(0, 0, 6000, 6000)), {
    rooms: [{ id: 'r', name: 'Den', use: 'den', at: [3000, 3000] }],
    fixtures: [
      {
        id: 'f',
        kind: 'floor-drain',
        name: '',
        shape: { circle: { center: [3000, 4200], radius: 50 } },
        bottom: 0,
        top: 0,
        stream: null,
      },
    ],
    detectors: [detectorAt([3000, 3083.2])],
  });
  const plan = planOf(level);

  it('are measured on the drawing, and far ones are not', () => {
    // 4200 − 3083.2 − 50 − 50.8 = 1016 mm, 3 ft 4 in.
    const words = firstSheet({ ...plan, display: { ...plan.display, length: 'feet-inches' } });
    expect(words).toContain('3 ft 4 in');
    const lines = measuredLines(subjectMatter(plan, 'L1'));
    expect(lines.map(({ to }) => to[1])).toEqual([4150]);
  });

  it('have the serial number of the log beside them', () => {
    expect(firstSheet(withLogEntry(plan, 'd1', { serial: '<script>7' }))).toContain('Serial <script>7.');
  });
});

describe('the orientation of a sheet', () => {
  const house = (width: number, depth: number) =>
    planOf(drawn(loop('w', rectangle(0, 0, width, depth)), { detectors: [detectorAt([3000, 3000])] }));
  const size = (plan: Plan, orientation?: 'portrait' | 'landscape') =>
    sizeOfPage(drawSheet({ plan, levelId: 'L1', paper: 'a4', orientation, date: DATE }));

  it('is chosen to fit: a long house across, a deep one upright', () => {
    const order = { levelId: 'L1', paper: 'a4', date: DATE } as const;
    expect(fittingOrientation({ ...order, plan: house(20000, 7000) })).toBe('landscape');
    expect(fittingOrientation({ ...order, plan: house(7000, 20000) })).toBe('portrait');
    expect(size(house(7000, 20000))).toEqual({ width: PAPERS.a4.height, height: PAPERS.a4.width });
  });

  it('is as it is asked for', () => {
    expect(size(house(7000, 20000), 'landscape').width).toBe(PAPERS.a4.width);
    expect(size(house(20000, 7000), 'portrait').width).toBe(PAPERS.a4.height);
  });
});
