import { useRef, useState } from 'react';
import { type DeviceLocation, deviceLocation } from '../../../platform/device-location.ts';
import { useLibrary } from '../../../storage/library-state.ts';
import { type Coordinates, wasWords } from './location-words.ts';

interface DeviceLook {
  readonly isLooking: boolean;
  readonly look: () => void;
  readonly stop: () => void;
}

/** Asks the device for its location, once at a time. A result after "stop", or after another plan was opened, is ignored. */
export function useDeviceLocation(
  old: Coordinates,
  enter: (found: Coordinates) => { readonly refusal: string; readonly zoneWords: string },
  setWords: (words: string) => void,
): DeviceLook {
  const [isLooking, setLooking] = useState(false);
  const latest = useRef(0);
  const look = async () => {
    latest.current += 1;
    const own = latest.current;
    const { openId } = useLibrary.getState();
    setLooking(true);
    setWords('Looking for the location…');
    const found = await deviceLocation();
    if (own !== latest.current) return;
    setLooking(false);
    if (useLibrary.getState().openId !== openId) return setWords('Another plan is open now: nothing was changed.');
    if (!found.ok) return setWords(found.why);
    const { refusal, zoneWords } = enter({ latitude: found.latitude, longitude: found.longitude });
    setWords(refusal || `${foundWords(found)}${wasWords(old)}${zoneWords}`);
  };
  const stop = () => {
    latest.current += 1;
    setLooking(false);
    setWords('Stopped: nothing was changed.');
  };
  return { isLooking, look: () => void look(), stop };
}

/** Accuracy radius above which the device knows the town and not the house, m. */
const FAR_M = 2000;

function foundWords({ within }: DeviceLocation & { readonly ok: true }): string {
  const near = within < 1000 ? `${Math.ceil(within)} m` : `${Math.ceil(within / 1000)} km`;
  const far = within > FAR_M ? ' That is the area, not the house: type what a map shows for it.' : '';
  return `Entered, right within ${near} as this device says.${far}`;
}
