import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { missingRecords } from '../../../../src/protocol/custody/missing-records.ts';
import { may, planOf } from '../../../helpers/custody.ts';

describe('what the records lack', () => {
  it('no longer asks for the chain of custody once it was mailed', () => {
    const asked = (visit: Partial<Visit>) =>
      missingRecords(planOf(['A1'], visit)).some((gap) => gap.startsWith('The chain of custody'));
    expect([asked({}), asked({ posted: may(5, '11:00') }), asked({ received: may(7, '08:00') })]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('names every detector with the same gap in one sentence, and counts many', () => {
    expect(missingRecords(planOf(['A1', 'A2'], { end: null }))).toEqual([
      'A1 and A2 have no serial number yet.',
      'Who placed A1 and A2 is not recorded.',
    ]);
    const many = planOf(['A1', 'A2', 'B1', 'B2', 'C1', 'C2', 'D1'], { end: null });
    expect(missingRecords(many)[0]).toBe('A1, A2, B1, B2 and 3 more have no serial number yet.');
  });

  it('asks for no seal and no chain of custody of a monitor, which is read on the spot', () => {
    const asked = missingRecords(planOf(['A1'], { device: 'monitor' }));
    expect(asked.filter((gap) => /sealed|custody/.test(gap))).toEqual([]);
    expect(asked).toContain('Who picked up A1 is not recorded.');
  });
});
