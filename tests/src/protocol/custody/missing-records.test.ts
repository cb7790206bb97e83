import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { missingRecords } from '../../../../src/protocol/custody/missing-records.ts';
import { may, planOf } from '../../../helpers/custody.ts';

describe('what the records lack', () => {
  it('no longer asks whose hands it went through once it was posted', () => {
    const asked = (visit: Partial<Visit>) =>
      missingRecords(planOf(['A1'], visit)).some((gap) => gap.startsWith('Whose hands'));
    expect([asked({}), asked({ posted: may(5, '11:00') }), asked({ received: may(7, '08:00') })]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('asks for no seal and no hands of a monitor, which is read on the spot', () => {
    const asked = missingRecords(planOf(['A1'], { device: 'monitor' }));
    expect(asked.filter((gap) => /sealed|hands/.test(gap))).toEqual([]);
    expect(asked).toContain('Who fetched A1 is not written down.');
  });
});
