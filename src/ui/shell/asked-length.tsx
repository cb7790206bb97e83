import { useLengths } from '../../editor/lengths/store.ts';
import { useSketch } from '../../editor/overlay/sketch.ts';
import { useAppStore } from '../../state/store.ts';
import { preloaded } from '../hooks/later.tsx';

// Not needed for the first picture, but the first length may be typed right after it.
const LengthBoxes = preloaded(() =>
  import('../../editor/lengths/boxes/length-boxes.tsx').then((part) => part.LengthBoxes),
);

/** The box over the sheet for the length that is asked for. */
export function AskedLength() {
  const isOpen = useLengths(({ open }) => open !== null);
  const isTyped = useSketch(({ typed }) => typed !== null);
  const byFinger = useSketch(({ touch }) => touch);
  const hasWall = useAppStore(({ chain }) => chain.corners.length > 1);
  return (isOpen || isTyped || (byFinger && hasWall)) && <LengthBoxes />;
}
