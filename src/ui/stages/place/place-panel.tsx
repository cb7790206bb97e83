import { isNothingAllowed } from '../../../state/nothing-allowed.ts';
import { QUESTIONS } from '../../../state/questions.ts';
import { useAppStore } from '../../../state/store.ts';
import { useLevel } from '../../hooks/use-level.ts';
import { useThrottled } from '../../hooks/use-throttled.ts';
import { Palette } from '../../questions/palette.tsx';
import { LocationFields } from '../site/locations.tsx';
import { BestSpots } from './best-spots.tsx';
import { Heights } from './heights.tsx';
import { OnFurniture } from './on-furniture.tsx';
import { SideBySide } from './side-by-side.tsx';
import { SunPanel } from './sun-panel.tsx';

/** Placement of detectors: place one, choose the height, see the required locations. */
export function PlacePanel() {
  const hasWalls = useLevel().walls.length > 0;
  const nothingAllowed = useThrottled(isNothingAllowed);
  return (
    <>
      <Palette questions={QUESTIONS.filter(({ id }) => id === 'sit')} alwaysOpen />
      {hasWalls && (
        <button type="button" className="button" onClick={() => useAppStore.getState().addDetector()}>
          {nothingAllowed ? 'Place one on this level' : 'Place one in the allowed area'}
        </button>
      )}
      {hasWalls && <BestSpots />}
      {hasWalls && <SideBySide />}
      {hasWalls && <OnFurniture />}
      <Heights />
      {hasWalls && <SunPanel />}
      <LocationFields />
    </>
  );
}
