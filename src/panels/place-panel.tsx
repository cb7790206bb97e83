import { useAppStore } from '../state/store.ts';
import { DetectorHeight } from './detector-height.tsx';
import { Locations } from './locations.tsx';
import { Palette } from './palette.tsx';
import { QUESTIONS } from './questions.ts';
import { useLevel } from './use-level.ts';

/** Where a detector might sit: set one, say how high, see where the house wants them. */
export function PlacePanel() {
  const hasWalls = useLevel().walls.length > 0;
  return (
    <>
      <Palette questions={QUESTIONS.filter(({ id }) => id === 'sit')} alwaysOpen />
      {hasWalls && (
        <button type="button" className="button" onClick={() => useAppStore.getState().addDetector()}>
          Set one on bare paper
        </button>
      )}
      <DetectorHeight />
      <Locations />
    </>
  );
}
