import type { Detector, EarlierResult, Plan, RadonUnit } from '../../../geometry/plan/model.ts';
import { CAUTIONS } from '../../../geometry/words.ts';
import { judgeReadings } from '../../job/readings/judge.ts';
import { RESULT_CAUTIONS, STANDING_WORDS } from '../../job/readings/report.ts';
import { testStanding } from '../../job/timing/report.ts';
import { useAppStore } from '../../state/store.ts';
import { NumberField } from '../fields/number-field.tsx';
import { SetSlip } from './set-slip.tsx';
import './read-panel.css';

/** The results of the laboratory, and what they come to. */
export function ReadPanel() {
  const plan = useAppStore((state) => state.plan);
  const run = useAppStore((state) => state.run);
  const detectors = plan.levels.flatMap((level) => level.detectors);
  const standing = testStanding(plan);
  const reports = judgeReadings(plan, standing);
  const change = (patch: Partial<Plan>) => run((now) => ({ ...now, ...patch }));
  if (detectors.length === 0) return <p>Set a detector first: a result belongs to the place where it was measured.</p>;
  return (
    <>
      <div className="fields">
        {detectors.map((detector) => (
          <ResultField key={detector.id} plan={plan} detector={detector} onChange={change} />
        ))}
        <EarlierField plan={plan} onChange={change} />
      </div>
      {reports.length > 0 && standing !== 'holds' && (
        <p className="read__warning" role="status">
          {STANDING_WORDS[standing]}
        </p>
      )}
      {reports.map((report) => (
        <SetSlip key={report.set.detectors.map(({ id }) => id).join()} plan={plan} report={report} />
      ))}
      <p className="small soft">{[...RESULT_CAUTIONS, ...CAUTIONS].join(' ')}</p>
    </>
  );
}

type Change = (patch: Partial<Plan>) => string;

/** The result of one detector in the unit of the plan; what was entered in the other one is shown as it was. */
function ResultField({
  plan,
  detector,
  onChange,
}: {
  readonly plan: Plan;
  readonly detector: Detector;
  readonly onChange: Change;
}) {
  const reading = plan.readings.find((each) => each.detector === detector.id);
  const unit: RadonUnit = reading?.unit ?? plan.display.radon;
  const name = detector.label.trim() || detector.id;
  const set = (value: number | null) => {
    const others = plan.readings.filter((each) => each.detector !== detector.id);
    return onChange({
      readings: value === null ? others : [...others, { ...reading, detector: detector.id, value, unit }],
    });
  };
  return (
    <NumberField
      label={`Result of ${name}, ${unitName(unit)}`}
      value={reading?.value ?? null}
      unit=""
      least={0}
      most={1e6}
      mayBeEmpty
      onCommit={set}
    />
  );
}

/** An initial short-term test at the same location, which this one follows up. */
function EarlierField({ plan, onChange }: { readonly plan: Plan; readonly onChange: Change }) {
  const earlier = plan.earlier?.find(({ term }) => term === 'short-term');
  const unit = earlier?.unit ?? plan.display.radon;
  const set = (value: number | null) => {
    const others = (plan.earlier ?? []).filter((each) => each !== earlier);
    const fresh: EarlierResult = { at: null, note: '', ...earlier, value: value ?? 0, unit, term: 'short-term' };
    return onChange({ earlier: value === null ? others : [...others, fresh] });
  };
  return (
    <div className="wide">
      <NumberField
        label={`Earlier short-term test here, ${unitName(unit)}`}
        value={earlier?.value ?? null}
        unit=""
        least={0}
        most={1e6}
        mayBeEmpty
        hint="Only where this test follows one up: the average of the two decides."
        onCommit={set}
      />
    </div>
  );
}

const unitName = (unit: RadonUnit) => (unit === 'Bq/m3' ? 'Bq/m³' : unit);
