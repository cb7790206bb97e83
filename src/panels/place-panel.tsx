import { useAppStore } from '../state/store.ts';
import { Locations } from './locations.tsx';
import { Palette } from './palette.tsx';
import { QUESTIONS } from './questions.ts';
import { BestSpots } from './spots/best-spots.tsx';
import { Heights } from './spots/heights.tsx';
import { OnFurniture } from './spots/on-furniture.tsx';
import { SideBySide } from './spots/side-by-side.tsx';
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
      {hasWalls && <BestSpots />}
      {hasWalls && <SideBySide />}
      {hasWalls && <OnFurniture />}
      <Heights />
      <Locations />
    </>
  );
}
