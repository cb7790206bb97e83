import { useRef, useState } from 'react';
import type { Site } from '../../../../geometry/plan/model.ts';
import { LATITUDE_FIELD } from '../../../commands/go-to.ts';
import { type DeviceLocation, deviceLocation } from '../../../platform/device-location.ts';
import { useLibrary } from '../../../storage/library-state.ts';
import { FieldGroup } from '../../fields/field-group.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import './site.css';

interface Props {
  readonly site: Site;
  readonly changeSite: (patch: Partial<Site>) => string;
}

/** Where the house stands, typed or as this device says. */
export function LocationFields({ site: { latitude, longitude }, changeSite }: Props) {
  const { words, isLooking, look, stop } = useDeviceLocation(latitude, longitude, changeSite);
  return (
    <FieldGroup name="Location">
      <NumberField
        id={LATITUDE_FIELD}
        label="Latitude"
        value={latitude}
        unit="°"
        least={-90}
        most={90}
        mayBeEmpty
        onCommit={(degrees) => changeSite({ latitude: degrees })}
      />
      <NumberField
        label="Longitude"
        value={longitude}
        unit="°"
        least={-180}
        most={180}
        mayBeEmpty
        onCommit={(degrees) => changeSite({ longitude: degrees })}
      />
      <div className="buttons wide">
        <button type="button" className="button" onClick={isLooking ? stop : look}>
          {isLooking ? 'Stop looking' : 'Use my location'}
        </button>
      </div>
      <p className="small wide" role="status">
        {words}
      </p>
      <p className="field__hint wide">
        For direct sun only. Pressed at the house: the browser asks you first, and Stillspot sends the location nowhere;
        it stays in this plan.
      </p>
    </FieldGroup>
  );
}

/** One look at a time; what comes after "stop", or for another plan than the one that is open, is not taken over. */
function useDeviceLocation(
  latitude: number | null,
  longitude: number | null,
  changeSite: Props['changeSite'],
): { readonly words: string; readonly isLooking: boolean; readonly look: () => void; readonly stop: () => void } {
  const [words, setWords] = useState('');
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
    const refusal = changeSite({ latitude: found.latitude, longitude: found.longitude });
    setWords(refusal || foundWords(found, latitude, longitude));
  };
  const stop = () => {
    latest.current += 1;
    setLooking(false);
    setWords('Stopped: nothing was changed.');
  };
  return { words, isLooking, look: () => void look(), stop };
}

/** From this far on, m, the device knows the town and not the house. */
const FAR_M = 2000;

function foundWords({ within }: DeviceLocation & { readonly ok: true }, ...old: readonly (number | null)[]): string {
  const near = within < 1000 ? `${Math.ceil(within)} m` : `${Math.ceil(within / 1000)} km`;
  const before = old.every((each) => each !== null) ? ` It was ${old.join(', ')}; Undo restores that.` : '';
  const far = within > FAR_M ? ' That is the area, not the house: type what a map shows for it.' : '';
  return `Entered, right within ${near} as this device says.${far}${before}`;
}
