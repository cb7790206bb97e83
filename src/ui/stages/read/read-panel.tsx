import { CAUTIONS } from '../../../../geometry/messages/index.ts';
import { RESULT_CAUTIONS } from '../../../protocol/results/describe-location.ts';
import { evaluateResults } from '../../../protocol/results/evaluate-results.ts';
import { homeStep } from '../../../protocol/validity/home-step.ts';
import { useAppStore } from '../../../state/store.ts';
import { testStateOf } from '../../../state/test-state.ts';
import { Parts } from '../parts.tsx';
import { EarlierTests } from './earlier-tests.tsx';
import { HouseResult } from './house-result.tsx';
import { usePlaces } from './places.ts';
import { ResultField } from './result-field.tsx';
import { SetResult } from './set-result.tsx';
import { StandingNote } from './standing-note.tsx';
import './read-panel.css';

/** The results of the laboratory, and what follows from them. */
export function ReadPanel() {
  const plan = useAppStore((state) => state.plan);
  const places = usePlaces(plan);
  const detectors = plan.levels.flatMap((level) => level.detectors);
  if (detectors.length === 0)
    return <p>Place a detector first: a result belongs to the location where it was measured.</p>;
  const state = testStateOf(plan);
  const reports = evaluateResults(plan, state);
  return (
    <Parts
      fields={
        <div className="read">
          {detectors.map((detector) => (
            <ResultField key={detector.id} plan={plan} detector={detector} place={places.get(detector.id) ?? ''} />
          ))}
          <EarlierTests plan={plan} />
        </div>
      }
      outcome={
        <div className="read">
          {reports.length > 0 && <StandingNote plan={plan} state={state} />}
          {reports.map((report) => (
            <SetResult
              key={report.set.detectors.map(({ id }) => id).join()}
              plan={plan}
              report={report}
              place={places.get(report.set.detectors[0]?.id ?? '') ?? ''}
            />
          ))}
          {reports.length > 0 && <HouseResult plan={plan} house={homeStep(plan, reports)} />}
          <p className="small soft">{[...RESULT_CAUTIONS, ...CAUTIONS].join(' ')}</p>
        </div>
      }
    />
  );
}
