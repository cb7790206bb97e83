import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { PLAN_LIMITS } from '../../../geometry/planfile/limits.ts';
import { watchLimits } from '../../../src/commands/limit-watch.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { useLibrary } from '../../../src/storage/library-state.ts';

const state = () => useAppStore.getState();
/** The open plan with so many rooms. */
const withRooms = (count: number) => (plan: Plan) => ({
  ...plan,
  levels: plan.levels.map((level) => ({
    ...level,
    rooms: Array.from({ length: count }, (_, i) => ({
      id: `room-${i}`,
      name: '',
      use: 'den' as const,
      at: [i, 0] as const,
    })),
  })),
});

let stop: () => void;
beforeEach(() => {
  vi.useFakeTimers();
  state().newPlan();
  stop = watchLimits();
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

describe('the limits of a plan', () => {
  it('are told after the message of the change that passes them, once, and all goes on', () => {
    state().run(withRooms(PLAN_LIMITS.rooms));
    vi.runAllTimers();
    expect(state().message).not.toContain('Stillspot is made for');
    state().run(withRooms(PLAN_LIMITS.rooms + 1));
    state().say('One room more.');
    vi.runAllTimers();
    expect(state().message).toBe(
      'One room more. The plan has 301 rooms. Stillspot is made for at most 300 rooms: everything works, but slower.',
    );
    state().say('');
    state().run(withRooms(PLAN_LIMITS.rooms + 2));
    vi.runAllTimers();
    expect(state().message).toBe('');
    expect(state().plan.levels[0]?.rooms).toHaveLength(302);
  });

  it('are left to who opens a plan beyond them', () => {
    const large = withRooms(PLAN_LIMITS.rooms + 1)(state().plan);
    useLibrary.setState({ openId: 'another' });
    state().openPlan(large);
    const { message } = state();
    vi.runAllTimers();
    expect(state().message).toBe(message);
  });
});
