import { useState } from 'react';
import type { Detector, Plan } from '../../../../geometry/plan/model.ts';
import type { RadonUnit, RadonValue, Reading } from '../../../../geometry/plan/test-record.ts';
import { detectorLabel } from '../../../protocol/detector-label.ts';
import { BELOW_LIMIT_NOTE } from '../../../protocol/results/describe-location.ts';
import { withoutReading, withReading } from '../../../protocol/results/edit-readings.ts';
import { enteredText, unitText } from '../../../protocol/results/radon.ts';
import type { EnteredRadon } from '../../../protocol/results/radon-input.ts';
import { useAppStore } from '../../../state/store.ts';
import { NumberField } from '../../fields/number-field.tsx';
import { RadonFields } from './radon-fields.tsx';

interface Props {
  readonly plan: Plan;
  readonly detector: Detector;
  readonly place: string;
}

/** The result of one detector, with its place. */
export function ResultField({ plan, detector, place }: Props) {
  const run = useAppStore((state) => state.run);
  const [unitBefore, setUnitBefore] = useState<RadonUnit>(plan.display.radon);
  const readings = plan.readings.filter((each) => each.detector === detector.id);
  const [reading] = readings;
  const unit = reading?.unit ?? unitBefore;
  const put = (patch: Partial<Reading> & RadonValue) =>
    run((now) => withReading(now, { ...reading, detector: detector.id, ...patch }));
  const enter = (entered: EnteredRadon | null) => {
    if (!entered) return run((now) => withoutReading(now, detector.id));
    const { value, unit: written, belowLimit } = entered;
    return put({ value, unit: written, ...(belowLimit || reading?.belowLimit ? { belowLimit } : {}) });
  };
  const name = detectorLabel(detector);
  return (
    <fieldset className="result">
      <legend>
        <strong>{name}</strong> <span className="soft">{place}</span>
      </legend>
      <RadonFields
        of={name}
        value={reading ? { ...reading, belowLimit: reading.belowLimit === true } : null}
        unit={unit}
        hint={'As the report has it: 3.9 or <\u00a00.4, below the limit.'}
        onEnter={enter}
        onUnit={(next) => (reading ? put({ value: reading.value, unit: next }) : setUnitBefore(next))}
      />
      {reading && (
        <NumberField
          label={`Uncertainty of ${name}, as reported`}
          value={reading.uncertainty ?? null}
          unit={` ${unitText(unit)}`}
          least={0}
          most={10_000}
          mayBeEmpty
          onCommit={(uncertainty) => run((now) => withReading(now, withUncertainty(reading, uncertainty)))}
        />
      )}
      <label className="tick">
        <input
          type="checkbox"
          aria-label={`Below the laboratory's limit, ${name}`}
          checked={reading?.belowLimit ?? false}
          disabled={!reading}
          onChange={(event) => reading && put({ ...reading, belowLimit: event.currentTarget.checked })}
        />
        Below the laboratory's limit
      </label>
      {reading?.belowLimit && <p className="small soft">{BELOW_LIMIT_NOTE}</p>}
      {readings.length > 1 && <WhichCounts name={name} readings={readings} />}
    </fieldset>
  );
}

function withUncertainty({ uncertainty: _, ...reading }: Reading, uncertainty: number | null): Reading {
  return uncertainty === null ? reading : { ...reading, uncertainty };
}

/** Asks which of several results of one detector in a file is right: only the report of the laboratory shows that. */
function WhichCounts({ name, readings }: { readonly name: string; readonly readings: readonly Reading[] }) {
  const run = useAppStore((state) => state.run);
  return (
    <div>
      <p>{name} has more than one result. Keep the one that the report of the laboratory has.</p>
      <div className="buttons">
        {readings.map((reading, index) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: two results may be the same in everything
            key={index}
            type="button"
            className="button"
            onClick={() => run((now) => withReading(now, reading))}
          >
            Keep {enteredText(reading)}
          </button>
        ))}
      </div>
    </div>
  );
}
