import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Forecast, Visit } from '../../../../geometry/plan/test-record.ts';
import { SEVERE_STORM } from '../../../protocol/timing/limits.ts';
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
/** No wind on land is stronger, in either unit; a typing error is likelier. */
const STRONGEST = 500;

/** The forecast that was looked up before the start: when, where, and what it said. */
export function ForecastFields({
  plan: { visit, site, display },
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (visit: Visit) => string;
}) {
  const { forecast } = visit;
  const unit = windUnit(display.length);
  const set = (patch: Partial<Forecast>) => onChange(withForecast(visit, patch));
  const sustained = forecast?.sustained ?? null;
  const wind = sustained === null ? 'wind not noted' : formatWind(sustained, display.length);
  const storm = STORM.find((choice) => choice.storm === (forecast?.storm ?? null)) ?? STORM[0];
  return (
    <details className="group">
      <summary>
        Forecast <span className="soft">{forecast ? wind : 'not noted'}</span>
      </summary>
      <div className="fields">
        <InstantField
          label="Looked up"
          hint="Before the start."
          value={forecast?.at ?? null}
          zone={site.timeZone}
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
        <NumberField
          label="Sustained wind"
          value={sustained === null ? null : sustained / unit.kmh}
          unit={` ${unit.name}`}
          least={0}
          most={STRONGEST}
          mayBeEmpty
          onCommit={(value) => set({ sustained: value === null ? null : value * unit.kmh })}
          hint="Not the gusts."
        />
        <ChoiceField
          label="Severe storm"
          value={storm?.value ?? 'not-noted'}
          choices={STORM}
          onCommit={(value) => set({ storm: STORM.find((choice) => choice.value === value)?.storm ?? null })}
          hint={SEVERE_STORM.words}
        />
        <div className="wide">
          <TextField
            label="Note on the forecast"
            value={forecast?.note ?? ''}
            hint="Why it ran all the same, say."
            onCommit={(note) => set({ note })}
          />
        </div>
      </div>
    </details>
  );
}
