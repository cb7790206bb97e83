import { afterAll, describe, expect, it } from 'vitest';
import type { Detector } from '../../../geometry/plan/model.ts';
import { setSunSource, sunFloor } from '../../../geometry/sun/sun-floor.ts';
import { sunTimes } from '../../../geometry/sun/times.ts';
import { startSun, sunAtOnce, sunSettled, sunSettledFor } from '../../../src/state/direct-sun.ts';
import { selectModel, selectRegion, selectReports } from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { houseOf } from '../../helpers/sun-room.ts';

const detector: Detector = {
  ...{ id: 'd1', label: 'A1', at: [2500, 2000], base: 762, radius: 50.8, tall: 25.4, pair: null },
  support: 'stand',
};
const sunny = (thickness: number) =>
  houseOf({
    thickness,
    more: { rooms: [{ id: 'r', name: '', use: 'den', at: [3000, 4000] }], detectors: [detector] },
  });
const store = useAppStore.getState;
const sun = () => selectReports(store())[0]?.checks.find(({ rule }) => rule === 'direct-sun');
const zones = () => selectRegion(store()).zones.filter(({ rule }) => rule === 'direct-sun').length;

describe('direct sun in the app', () => {
  afterAll(() => setSunSource(() => null));

  it('is unknown until it is worked out, then known, and shown again', async () => {
    startSun();
    store().openPlan(sunny(200));
    expect(sun()).toMatchObject({ verdict: 'unknown', notRun: false });
    expect(zones()).toBe(0);
    await sunSettled();
    expect(sun()).toMatchObject({ verdict: 'blocked', subject: 'glass' });
    selectRegion(store());
    await sunSettled();
    expect(zones()).toBeGreaterThan(0);
  });

  it('is worked out first for what somebody waits for, and nothing else is waited for', async () => {
    store().openPlan(sunny(203));
    const [model, times] = [selectModel(store()), sunTimes(store().plan)];
    if (!times) throw new Error('the house has a place and times');
    const isKnown = (heights: Pick<Detector, 'base' | 'tall'>) => sunFloor(model, times, heights) !== null;
    const others = Array.from({ length: 12 }, (_, i) => ({ base: 300 + i * 100, tall: 25 }));
    const known = () => others.filter(isKnown).length;
    expect(known()).toBe(0);
    await sunSettledFor(() => void isKnown(detector));
    expect(known()).toBe(0);
    expect(sun()?.verdict).toBe('blocked');
    await sunSettled();
    expect(known()).toBe(12);
    // What is known is not waited for.
    await sunSettledFor(() => void isKnown(detector));
  });

  it('is worked out at once for a file', () => {
    store().openPlan(sunny(201));
    expect(sunAtOnce(sun)).toMatchObject({ verdict: 'blocked' });
  });

  it('costs nothing while a detector is dragged, and waits for the end of the drag of a wall', async () => {
    store().openPlan(sunny(202));
    expect(sun()?.verdict).toBe('unknown');
    await sunSettled();
    let asked = 0;
    store().setDraggedDetector({ id: 'd1', at: [2500, 4800], base: 762, byTouch: false });
    setSunSource(() => {
      asked++;
      return null;
    });
    expect(sun()).toMatchObject({ verdict: 'clear', subject: 'glass' });
    store().setDraggedDetector({ id: 'd1', at: [2500, 2000], base: 762, byTouch: false });
    expect(sun()).toMatchObject({ verdict: 'blocked' });
    expect(asked).toBe(0);
    store().setDraggedDetector(null);
  });
});
