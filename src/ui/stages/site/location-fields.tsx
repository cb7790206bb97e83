import { useEffect, useState } from 'react';
import type { Site } from '../../../../geometry/plan/model.ts';
import { zoneOfPlace } from '../../../advice/zone-of-place.ts';
import { LATITUDE_FIELD } from '../../../commands/go-to.ts';
import { useAppStore } from '../../../state/store.ts';
import { type LastPlace, lastPlace } from '../../../storage/last-place.ts';
import { useLibrary } from '../../../storage/library-state.ts';
import { FieldGroup } from '../../fields/field-group.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { type Coordinates, signedDegrees, wasWords } from './location-words.ts';
import { PlaceSearch } from './place-search.tsx';
import { useDeviceLocation } from './use-device-location.ts';
import './site.css';

interface Props {
  readonly site: Site;
  readonly changeSite: (patch: Partial<Site>) => string;
}

/** The location of the house: from the list of places, typed, from this device, or from the last plan. Sets the time zone too. */
export function LocationFields({ site, changeSite }: Props) {
  const [words, setWords] = useState('');
  const { latitude, longitude } = site;
  const enter = (found: Partial<Coordinates>) => enterPlace(site, changeSite, found);
  const enterNamed = (name: string, found: Coordinates, zone?: string) => {
    const { refusal, zoneWords } = enterPlace(site, changeSite, found, zone);
    setWords(refusal || `Entered: ${name} (${found.latitude}, ${found.longitude}).${wasWords(site)}${zoneWords}`);
  };
  const typed = (found: Partial<Coordinates>) => {
    const { refusal, zoneWords } = enter(found);
    if (!refusal) setWords(zoneWords.trim());
    return refusal;
  };
  const { isLooking, look, stop } = useDeviceLocation(site, enter, setWords);
  const last = useLastPlace();
  return (
    <FieldGroup name="Location">
      <PlaceSearch onChoose={(place) => enterNamed(`the middle of ${place.name}`, place)} />
      <NumberField
        id={LATITUDE_FIELD}
        label="Latitude"
        value={latitude}
        unit="°"
        least={-90}
        most={90}
        mayBeEmpty
        inDigits={(text) => signedDegrees(text, ['N', 'S'])}
        hint="South of the equator with a minus, or 42.9 S."
        onCommit={(degrees) => typed({ latitude: degrees })}
      />
      <NumberField
        label="Longitude"
        value={longitude}
        unit="°"
        least={-180}
        most={180}
        mayBeEmpty
        inDigits={(text) => signedDegrees(text, ['E', 'W'])}
        hint="West with a minus, or 75.6 W."
        onCommit={(degrees) => typed({ longitude: degrees })}
      />
      <div className="buttons wide">
        <button type="button" className="button" onClick={isLooking ? stop : look}>
          {isLooking ? 'Stop looking' : 'Use my location'}
        </button>
        {last && (
          <button
            type="button"
            className="button"
            onClick={() => enterNamed(`as in "${last.title}"`, last, last.timeZone)}
          >
            As in "{last.title}"
          </button>
        )}
      </div>
      <p className="small wide" role="status">
        {words}
      </p>
      <p className="field__hint wide">
        For direct sun only. 10 miles change where the sun stands by less than 0.2°, a third of its disc: the middle of
        a ZIP area is near enough. The location goes nowhere; it stays in this plan. Your device's is asked for when you
        press, at the house. Places: US Census Bureau; GeoNames, CC BY 4.0.
      </p>
    </FieldGroup>
  );
}

/**
 * Enters a location, with its time zone in the same step of the history.
 * @param zone its time zone if known; it is then not looked up
 */
function enterPlace(
  { latitude, longitude, timeZone }: Site,
  changeSite: Props['changeSite'],
  found: Partial<Coordinates>,
  zone?: string,
): { readonly refusal: string; readonly zoneWords: string } {
  const { latitude: north, longitude: east }: Coordinates = { latitude, longitude, ...found };
  const known = zone === undefined ? null : { zone, isDoubtful: false };
  const next = known ?? (north === null || east === null ? null : zoneOfPlace(north, east, timeZone, Date.now()));
  const coordinates = { latitude: north, longitude: east };
  const refusal = changeSite(next ? { ...coordinates, timeZone: next.zone } : coordinates);
  if (!next || next.zone === timeZone) return { refusal, zoneWords: '' };
  const { start, end } = useAppStore.getState().plan.visit;
  const times = start !== null || end !== null ? ' The times of the test are shown in that zone now: check them.' : '';
  const doubt = next.isDoubtful ? ' Another time is kept within 30 miles: check it.' : '';
  return { refusal, zoneWords: ` Time zone: ${next.zone}, before ${timeZone}.${doubt}${times}` };
}

/** Returns the location of the last plan in this browser; null for none. */
function useLastPlace(): LastPlace | null {
  const changes = useLibrary((state) => state.changes);
  const openId = useLibrary((state) => state.openId);
  const [last, setLast] = useState<LastPlace | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again when the library or the open plan changes
  useEffect(() => {
    let isWanted = true;
    lastPlace().then(
      (place) => isWanted && setLast(place),
      // Without the store there is no last plan.
      () => isWanted && setLast(null),
    );
    return () => {
      isWanted = false;
    };
  }, [changes, openId]);
  return last;
}
