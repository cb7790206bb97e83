import { useMemo, useSyncExternalStore } from 'react';
import type { StageState } from '../../advice/stages.ts';
import type { Validity } from '../../protocol/validity/validity.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { sunVersion } from '../../state/sun-version.ts';
import { PartSource } from './part-source.ts';
import { useMinute } from './use-minute.ts';

/**
 * The code that judges the whole test, and the line that says how it stands. `main.tsx` requests it: before the first picture of a stored plan,
 * after that of an empty one.
 */
export const GUIDANCE = new PartSource(async () => {
  const [{ guidanceOf, validityOf }, { TestLine }] = await Promise.all([
    import('../../state/plan-guidance.ts'),
    import('../verdict/test-line.tsx'),
  ]);
  return { guidanceOf, validityOf, TestLine };
});

/** Returns that code; null while it is not loaded. */
export const useGuidancePart = () => useSyncExternalStore(GUIDANCE.subscribe, () => GUIDANCE.part);

/**
 * Returns what is done and missing at each stage, over all levels; null while its code is not loaded. Uses the plan at rest, which a drag
 * does not change.
 */
export function useGuidance(): readonly StageState[] | null {
  const part = useGuidancePart();
  const plan = useAppStore((state) => state.plan);
  const inViewId = useAppStore((state) => selectLevel(state).id);
  const now = useMinute();
  const doubts = useAppStore(({ second }) => second?.doubts);
  const sun = useAppStore(sunVersion);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a doubt and the sun change what the levels are judged
  return useMemo(() => part?.guidanceOf(plan, inViewId, now) ?? null, [part, plan, inViewId, now, doubts, sun]);
}

/** Returns whether the test is valid; unknown while the code that judges it is not loaded. */
export function useTestValidity(): Validity {
  const part = useGuidancePart();
  return useAppStore(({ plan }) => part?.validityOf(plan) ?? 'unknown');
}
