import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { withTracing } from '../../../geometry/edit/index.ts';
import type { Tracing } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { modelOf, selectLevel, selectModel, selectRegion, selectReports } from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';

const TRACING: Tracing = {
  image: 'data:image/png;base64,AAAA',
  name: '',
  width: 800,
  height: 600,
  at: [0, 0],
  scale: 10,
  turn: 0,
  opacity: 0.6,
  shown: true,
  locked: false,
};
const state = useAppStore.getState;
const lay = (change: Partial<Tracing> | null) =>
  state().run((plan) => withTracing(plan, selectLevel(state()).id, change && { ...TRACING, ...change }));

describe('a picture under the level', () => {
  beforeEach(() => {
    const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
    if (read.ok) state().openPlan(read.plan);
  });

  it('is nothing to the engine: rooms, white and verdicts are the same objects whatever becomes of it', () => {
    const [{ rooms }, region, reports] = [selectModel(state()), selectRegion(state()), selectReports(state())];
    expect(reports.length).toBeGreaterThan(0);
    for (const change of [{}, { opacity: 0.3 }, { at: [500, 500] as const }, null]) {
      expect(lay(change)).toBe('');
      expect(selectModel(state()).rooms).toBe(rooms);
      expect(selectRegion(state())).toBe(region);
      expect(selectReports(state())).toEqual(reports);
      expect(selectReports(state()).every((report, index) => report === reports[index])).toBe(true);
    }
  });

  it('is in the level of the model as it is now: an edit that is worked out from the model does not bring an older one back', () => {
    lay({});
    selectModel(state());
    lay({ opacity: 0.3 });
    expect(selectModel(state()).level.tracing?.opacity).toBe(0.3);
    expect(modelOf(selectLevel(state()))).toBe(selectModel(state()));
  });
});
