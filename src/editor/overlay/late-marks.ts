import { useShown } from '../../state/shown.ts';

type DrawMarks = typeof import('../paint/spots.ts')['drawnMarks'];

let draws: DrawMarks | null = null;

/** How the marks that panels ask for are drawn: its code comes after the start, before any panel can ask. */
export function drawMarksWith(drawn: DrawMarks): void {
  draws = drawn;
  // What was asked for meanwhile shows now.
  useShown.setState((shown) => ({ ...shown }));
}

/** What the panels ask to be shown on the level in view; nothing until it is known how. */
export const drawnMarks: DrawMarks = (...asked) => draws?.(...asked) ?? [];
