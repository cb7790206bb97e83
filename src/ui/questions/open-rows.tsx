import type { DetectorReport } from '../../../geometry/check/types.ts';
import { openRules } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import type { EffectiveRule } from '../../../geometry/rules/profiles.ts';
import { actionToSettle } from '../../advice/guidance/answer-actions.ts';
import { followHint } from '../../commands/go-to.ts';
import { SupportAnswer } from './support-answer.tsx';
import './open-rows.css';

interface Props {
  readonly detector: Detector;
  readonly report: DetectorReport;
  readonly plan: Plan;
  readonly level: Level;
}

/** The checks that a verdict leaves open. Each name leads to its question; what the detector rests on is answered here. */
export function OpenRows({ detector, report, plan, level }: Props) {
  const { looks, others } = openRules(report, plan);
  return (
    <div className="open-rows">
      <OpenLine says="Not looked for" rules={looks} {...{ report, plan, level }} />
      <OpenLine says="Not run" rules={others.filter(({ id }) => id !== 'support')} {...{ report, plan, level }} />
      <SupportAnswer detector={detector} report={report} isGoal />
    </div>
  );
}

interface LineProps extends Omit<Props, 'detector'> {
  readonly says: string;
  readonly rules: readonly EffectiveRule[];
}

function OpenLine({ says, rules, report, plan, level }: LineProps) {
  if (rules.length === 0) return null;
  return (
    <p className="open-rows__line">
      {says}:{' '}
      {rules.map(({ id, name }) => {
        const way = actionToSettle(plan, level, report, id);
        if (!way) return <span key={id}>{name.toLowerCase()}</span>;
        return (
          <button key={id} type="button" className="button open-rows__way" onClick={() => followHint(way)}>
            {name}
          </button>
        );
      })}
    </p>
  );
}
