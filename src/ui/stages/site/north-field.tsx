import type { Site } from '../../../../geometry/plan/model.ts';
import { fullTurn } from '../../../../geometry/plane/bearing.ts';
import { NORTH_FIELD } from '../../../commands/go-to.ts';
import { FieldGroup } from '../../fields/field-group.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { Compass } from './compass.tsx';
import { DeviceNorth } from './device-north.tsx';
import { StreetNorth } from './street-north.tsx';
import { SunNorth } from './sun-north.tsx';
import './site.css';

interface Props {
  readonly site: Site;
  readonly changeSite: (patch: Partial<Site>) => string;
}

/** Fields for the direction of north on the page: turned on a compass rose, typed in degrees, or not known. */
export function NorthField({ site, changeSite }: Props) {
  const north = site.northAnswered === false ? null : site.north;
  const change = (next: number | null) =>
    changeSite(next === null ? { north: 0, northAnswered: false } : { north: fullTurn(next), northAnswered: true });
  return (
    <FieldGroup name="North">
      <div className="north wide">
        <Compass north={north} onCommit={change} />
        <div className="north__typed">
          <NumberField
            id={NORTH_FIELD}
            label="North, from up the page"
            value={north}
            unit="°"
            least={-360}
            most={360}
            mayBeEmpty
            onCommit={change}
          />
          <button type="button" className="button" aria-pressed={north === null} onClick={() => change(null)}>
            Not known
          </button>
        </div>
      </div>
      <p className="field__hint wide">
        Turn N to where north is when you look at the plan. A phone's compass is seldom nearer than 10° indoors. Not
        known: the plan sheet states that north is not given, and direct sun is not worked out.
      </p>
      <StreetNorth site={site} changeSite={changeSite} />
      <SunNorth site={site} changeSite={changeSite} />
      <DeviceNorth site={site} changeSite={changeSite} />
    </FieldGroup>
  );
}
