import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { describeDuplicateSerial } from '../../../../src/protocol/custody/detectors.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { missingRecords } from '../../../../src/protocol/custody/missing-records.ts';
import { planOf } from '../../../helpers/custody.ts';

describe('serial numbers', () => {
  const two = withLogEntry(withLogEntry(planOf(['A1', 'A2']), 'd1', { serial: 'C-1001' }), 'd2', { serial: ' c-1001' });

  it('that stand twice are remarked at both, whatever the scanner makes of blanks and capitals', () => {
    expect(describeDuplicateSerial(two, 'd1')).toBe('A2 has the same serial number. Check the labels again.');
    expect(describeDuplicateSerial(two, 'd2')).toBe('A1 has the same serial number. Check the labels again.');
    expect(missingRecords(two)).toContain('A1: A2 has the same serial number. Check the labels again.');
  });

  it('of a blank or spike of the plan count too; none at all is no double', () => {
    const blank = {
      id: 'q1',
      kind: 'blank',
      at: null,
      serial: 'C-7',
      by: '',
      value: 0.1,
      unit: 'pCi/L',
      reference: null,
      detectionLimit: null,
      note: '',
    } as const;
    const plan: Plan = { ...withLogEntry(planOf(['A1', 'A2']), 'd1', { serial: 'C-7' }), quality: [blank] };
    expect(describeDuplicateSerial(plan, 'd1')).toBe('A blank has the same serial number. Check the labels again.');
    expect(describeDuplicateSerial(planOf(['A1', 'A2']), 'd1')).toBe('');
  });

  it('are remarked exactly where two are the same', () => {
    const serials = fc.array(fc.constantFrom('', 'A', 'a', ' A ', 'B', 'B 2', 'b2'), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(serials, (all) => {
        const plan = all.reduce(
          (now, serial, i) => withLogEntry(now, `d${i + 1}`, { serial }),
          planOf(all.map((_, i) => `K${i}`)),
        );
        const plain = all.map((serial) => serial.replaceAll(' ', '').toLowerCase());
        for (const [i, own] of plain.entries()) {
          const twice = own !== '' && plain.some((other, j) => j !== i && other === own);
          expect(describeDuplicateSerial(plan, `d${i + 1}`) !== '').toBe(twice);
        }
      }),
    );
  });
});
