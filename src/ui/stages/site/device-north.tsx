import { useRef, useState } from 'react';
import type { Site } from '../../../../geometry/plan/model.ts';
import { fullTurn } from '../../../../geometry/plane/bearing.ts';
import { northByBearing } from '../../../../geometry/sun/north-by-sun.ts';
import { declination } from '../../../platform/declination.ts';
import { deviceHeading } from '../../../platform/device-heading.ts';
import { samePlan } from '../../../storage/library-state.ts';
import { ROUGH_NORTH, wasNorthWords } from './direction-words.ts';

interface Props {
  readonly site: Site;
  readonly changeSite: (patch: Partial<Site>) => string;
}

/** Refusal without a location. Magnetic north must never be used as true north: a spot in direct sun could then pass as clear of it. */
const NO_PLACE =
  'Enter the location of the house first: a compass shows magnetic north, up to 20° from true north, and how far depends on the place.';

/** Sets north by the compass of the device, which is held so that the plan on its screen is aligned with the house. */
export function DeviceNorth({ site, changeSite }: Props) {
  const [words, setWords] = useState('');
  const [isReading, setReading] = useState(false);
  const latest = useRef(site);
  latest.current = site;
  const read = async () => {
    if (!isPlaced(site)) return setWords(NO_PLACE);
    const isSame = samePlan();
    setReading(true);
    setWords('Hold still…');
    const found = await deviceHeading();
    setReading(false);
    if (!isSame()) return setWords('Another plan is open now: nothing was changed.');
    if (!found.ok) return setWords(found.why);
    setWords(setNorth(latest.current, changeSite, found.heading));
  };
  return (
    <details className="group wide">
      <summary>Find north by this device</summary>
      <div className="fields">
        <p className="small wide">
          Hold the device flat, outdoors or well away from iron, and turn yourself until the plan on its screen lies as
          the house does. Then press.
        </p>
        <div className="buttons wide">
          <button type="button" className="button" disabled={isReading} onClick={() => void read()}>
            Set north by this device
          </button>
        </div>
        <p className="small wide" role="status">
          {words === NO_PLACE && isPlaced(site) ? '' : words}
        </p>
      </div>
    </details>
  );
}

const isPlaced = (site: Site): site is Site & { readonly latitude: number; readonly longitude: number } =>
  site.latitude !== null && site.longitude !== null;

/** Sets north. Returns in words what was set, or why nothing was. `heading`: degrees clockwise from magnetic north. */
function setNorth(site: Site, changeSite: Props['changeSite'], heading: number): string {
  if (!isPlaced(site)) return NO_PLACE;
  const off = declination(site.latitude, site.longitude, Date.now());
  // The top of the screen is up on the page.
  const found = fullTurn(Math.round(northByBearing(0, heading + off)));
  const refusal = changeSite({ north: found, northAnswered: true });
  const allowed = `Magnetic north is ${Math.abs(Math.round(off))}° ${off < 0 ? 'west' : 'east'} of true north there: allowed for.`;
  return refusal || `North is set: seldom nearer than 10° indoors. ${allowed}${ROUGH_NORTH}${wasNorthWords(site)}`;
}
