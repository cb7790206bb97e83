import { describe, expect, it } from 'vitest';
import { FIXTURE_KINDS } from '../../../../geometry/plan/model.ts';
import { FIXTURE_DEFAULTS, OBJECT_DEFAULTS, usualHeights } from '../../../../src/state/defaults.ts';

describe('the heights that a new thing begins with', () => {
  it('are marked as measured by nobody, except where it is on the floor', () => {
    expect(usualHeights(OBJECT_DEFAULTS.table, 2286)).toEqual({ bottom: 0, top: 736.6, topAnswered: false });
    expect(usualHeights(FIXTURE_DEFAULTS['ceiling-fan'], 2286)).toMatchObject({
      bottomAnswered: false,
      topAnswered: false,
    });
    expect(usualHeights(FIXTURE_DEFAULTS['sump-pit'], 2286)).toEqual({ bottom: 0, top: 0 });
    for (const kind of FIXTURE_KINDS) {
      const { bottom, top, bottomAnswered, topAnswered } = usualHeights(FIXTURE_DEFAULTS[kind], 2286);
      expect([bottomAnswered, topAnswered]).toEqual([bottom === 0 ? undefined : false, top === 0 ? undefined : false]);
    }
  });
});
