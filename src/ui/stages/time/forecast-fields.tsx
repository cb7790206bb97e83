import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Forecast, Visit } from '../../../../geometry/plan/test-record.ts';
import type { LengthUnit } from '../../../../geometry/units/index.ts';
import { SEVERE_STORM } from '../../../protocol/timing/limits.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { formatWind, windUnit, withForecast } from '../../../protocol/timing/weather-check.ts';
import { type Choice, ChoiceField } from '../../fields/choice-field.tsx';
import { InstantField } from '../../fields/instant-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

type Storm = 'not-noted' | 'no' | 'yes';
const STORM: readonly (Choice<Storm> & { readonly storm: boolean | null })[] = [
  { value: 'not-noted', words: 'Not noted', storm: null },
  { value: 'no', words: 'No', storm: false },
  { value: 'yes', words: 'Yes', storm: true },
];
/** Maximum wind speed, in either unit: a higher number is more likely a typing error. */
const STRONGEST = 500;

/** Fields for the forecast that was looked up before the start: when, where, and what it said. */
export function ForecastFields({
  plan: { visit, site, display },
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (visit: Visit) => string;
}) {
  const { forecast } = visit;
  const set = (patch: Partial<Forecast>) => onChange(withForecast(visit, patch));
  const sustained = forecast?.sustained ?? null;
  return (
    <details className="group">
      <summary>
        Forecast <span className="soft">{forecast ? windWords(sustained, display.length) : 'not noted'}</span>
      </summary>
      <div className="fields">
        <InstantField
          label="Looked up"
          hint="Before the start."
          value={forecast?.at ?? null}
          zone={site.timeZone}
          refuse={notAhead(site.timeZone)}
          onCommit={(at) => set({ at })}
        />
        <div className="wide">
          <TextField
            label="Where it was read"
            value={forecast?.source ?? ''}
            hint="The weather service and the place it is for."
            onCommit={(source) => set({ source })}
          />
        </div>
        <WindField value={sustained} length={display.length} onCommit={(value) => set({ sustained: value })} />
        <ChoiceField
          label="Severe storm"
          value={stormChoice(forecast?.storm ?? null)}
          choices={STORM}
          onCommit={(value) => set({ storm: STORM.find((choice) => choice.value === value)?.storm ?? null })}
          hint={SEVERE_STORM.words}
        />
        <div className="wide">
          <TextField
            label="Note on the forecast"
            value={forecast?.note ?? ''}
            hint="Why it ran anyway, for instance."
            onCommit={(note) => set({ note })}
          />
        </div>
      </div>
    </details>
  );
}

/** A field for a sustained wind, km/h, typed in mph or km/h depending on the unit of length. */
function WindField({
  value,
  length,
  onCommit,
}: {
  readonly value: number | null;
  readonly length: LengthUnit;
  readonly onCommit: (kmh: number | null) => string;
}) {
  const unit = windUnit(length);
  return (
    <NumberField
      label="Sustained wind"
      value={value === null ? null : value / unit.kmh}
      unit={` ${unit.name}`}
      least={0}
      most={STRONGEST}
      mayBeEmpty
      onCommit={(typed) => onCommit(typed === null ? null : typed * unit.kmh)}
      hint="Not the gusts."
    />
  );
}

function windWords(sustained: number | null, unit: LengthUnit): string {
  return sustained === null ? 'wind not noted' : formatWind(sustained, unit);
}

function stormChoice(storm: boolean | null): Storm {
  return STORM.find((choice) => choice.storm === storm)?.value ?? 'not-noted';
}
