import { describeSources } from '../../../../geometry/messages/sources.ts';
import { lacksObserverOrTime } from '../../../protocol/conditions/condition-row.ts';
import {
  conditionsReport,
  DEVIATION_SOURCES,
  WHY_DEVIATIONS_COUNT,
} from '../../../protocol/conditions/conditions-report.ts';
import { useAppStore } from '../../../state/store.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';
import { Parts } from '../parts.tsx';
import { AgreementFields } from './agreement-fields.tsx';
import { ConditionEntry } from './condition-item.tsx';
import { Papers } from './papers.tsx';
import { WHOLE } from './state-words.ts';
import { signAnswers } from './walk.ts';
import { WalkFields } from './walk-fields.tsx';
import './house.css';

/**
 * The house during the test: each condition with who saw it and when, and the documents of the visit. There is no button that answers all
 * conditions, because a condition that was not inspected would then pass.
 */
export function HousePanel() {
  const plan = useAppStore((state) => state.plan);
  const report = conditionsReport(plan);
  const { word, mark } = WHOLE[report.validity];
  return (
    <Parts
      fields={
        <>
          <WalkFields
            lacking={report.rows.filter(lacksObserverOrTime)}
            onSign={signAnswers}
            hint="Both are recorded with each answer; press an answer again to update them."
          />
          <section aria-labelledby="conditions-heading">
            <h3 id="conditions-heading">Closed-building conditions</h3>
            <p className="small soft">Press a name to see what is required and where it is published.</p>
            <ul className="conditions">
              {report.rows.map((row) => (
                <ConditionEntry key={row.item.id} row={row} />
              ))}
            </ul>
          </section>
        </>
      }
      outcome={
        <>
          <div className="house-whole" data-verdict={mark}>
            <p className="house-whole__word">
              <VerdictMark verdict={mark} size={24} />
              <span>The house: {word}</span>
            </p>
            <p>{report.text}</p>
          </div>
          <details className="small soft">
            <summary>What a deviation means</summary>
            {WHY_DEVIATIONS_COUNT} {describeSources(DEVIATION_SOURCES)}
          </details>
          <AgreementFields plan={plan} />
          <Papers kinds={['notice', 'entrance-notice', 'door-hanger', 'agreement', 'placement-card']} />
          <Cautions />
        </>
      }
    />
  );
}
