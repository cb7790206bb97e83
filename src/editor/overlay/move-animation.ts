import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { MOTION_MS } from '../../theme/tokens.ts';
import { useSketch } from './sketch.ts';

/** Shorter moves are noticed without an animation, mm. */
const LEAST_MOVE = 60;

/**
 * Animates a detector that a button or an undo has moved to its new place, so that the move is seen. A dragged detector is there already.
 * Off if the system asks for reduced motion.
 */
export function animateMovedDetectors(): void {
  const reducedMotion = window.matchMedia('(prefers-reduced-motion: reduce)');
  let shown = places();
  let frame = 0;
  const glide = (id: string, from: XY, to: XY) => {
    const start = performance.now();
    cancelAnimationFrame(frame);
    const step = (now: number) => {
      const share = Math.min(1, Math.max(0, (now - start) / MOTION_MS));
      const eased = 1 - (1 - share) ** 2;
      const at: XY = [from[0] + (to[0] - from[0]) * eased, from[1] + (to[1] - from[1]) * eased];
      useSketch.setState({ glide: share < 1 ? { id, at } : null });
      if (share < 1) frame = requestAnimationFrame(step);
    };
    useSketch.setState({ glide: { id, at: from } });
    frame = requestAnimationFrame(step);
  };
  useAppStore.subscribe((state, before) => {
    if (
      state.plan === before.plan &&
      state.draggedDetector === before.draggedDetector &&
      state.levelId === before.levelId
    )
      return;
    const now = places();
    const sameSheet = state.levelId === before.levelId && !state.draggedDetector && state.plan !== before.plan;
    const moved = [...now].filter(([id, at]) => shown.has(id) && distance(shown.get(id) as XY, at) > LEAST_MOVE);
    const [one] = moved;
    if (sameSheet && one && moved.length === 1 && !reducedMotion.matches)
      glide(one[0], shown.get(one[0]) as XY, one[1]);
    shown = now;
  });
}

/** Place where each detector of the level in view is shown, dragged or at rest. */
function places(): ReadonlyMap<string, XY> {
  const state = useAppStore.getState();
  const { draggedDetector } = state;
  return new Map(
    selectLevel(state).detectors.map(({ id, at }) => [id, draggedDetector?.id === id ? draggedDetector.at : at]),
  );
}
