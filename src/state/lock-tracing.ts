import { withTracing } from '../../geometry/edit/tracing.ts';
import { useAppStore } from './store.ts';

/** Locks the picture under a level as one step of history, and says so. Does nothing where there is none. */
export function lockTracing(levelId: string): void {
  const { plan, run, say } = useAppStore.getState();
  const tracing = plan.levels.find(({ id }) => id === levelId)?.tracing;
  if (!tracing) return;
  const refusal = run((now) => withTracing(now, levelId, { ...tracing, locked: true }));
  say(refusal || 'The picture is locked in place. Draw over it.');
}
