import type { CSSProperties } from 'react';
import type { Check, DetectorReport } from '../../../geometry/check/types.ts';
import {
  capital,
  checkFigures,
  checkSubject,
  checksInOrder,
  describeCheck,
  overrideWord,
} from '../../../geometry/messages/index.ts';
import { sourceDoubts } from '../../../geometry/messages/sources.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { ruleOf } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { formatRequired } from '../../../geometry/units/index.ts';
import { AirWay } from '../stages/place/air-way.tsx';
import { VerdictMark } from './verdict-mark.tsx';
import './clearance-list.css';

interface Props {
  readonly report: DetectorReport;
  readonly plan: Plan;
  readonly level: Level;
}

/** One row for each rule, the tightest first. The notches of all bars are aligned. */
export function ClearanceList({ report, plan, level }: Props) {
  const rows = rowsOf(report.checks);
  return (
    <ol className="clearances" aria-label="Clearances, tightest first">
      {rows.map(([worst, ...others]) => (
        <Rung key={worst.rule} worst={worst} others={others} plan={plan} level={level} detectorId={report.id} />
      ))}
    </ol>
  );
}

type Row = readonly [Check, ...Check[]];

function rowsOf(checks: readonly Check[]): readonly Row[] {
  const rows = new Map<RuleId, [Check, ...Check[]]>();
  for (const check of checksInOrder(checks)) {
    if (check.notRun) continue;
    const row = rows.get(check.rule);
    if (row) row.push(check);
    else rows.set(check.rule, [check]);
  }
  return [...rows.values()];
}

interface RungProps {
  readonly worst: Check;
  readonly others: readonly Check[];
  readonly plan: Plan;
  readonly level: Level;
  readonly detectorId: string;
}

function Rung({ worst, others, plan, level, detectorId }: RungProps) {
  const rule = ruleOf(plan.protocol, worst.rule);
  const { measured, needed, spare } = checkFigures(worst, plan);
  const unit = plan.display.length;
  const subject = checkSubject(worst, plan, level).replace(/^the /, '');
  return (
    <li className="rung" data-verdict={worst.verdict}>
      <details>
        <summary>
          <span className="rung__line">
            <VerdictMark verdict={worst.verdict} size={16} />
            <span className="rung__name">{subject ? capital(subject) : rule.name}</span>
            <span className="rung__spare">{spare || worst.verdict}</span>
          </span>
          {measured && (
            <span className="rung__line rung__line--bar">
              <Bar check={worst} />
              <span className="rung__figures">
                {measured}{' '}
                <span className="soft">
                  {worst.bound === 'least' ? 'of' : 'at most'} {needed}
                </span>
              </span>
            </span>
          )}
          {worst.override && (
            <span className="rung__override" data-loosened={worst.override.loosened || undefined}>
              {overrideWord(worst.required, worst.override)}
            </span>
          )}
        </summary>
        <div className="rung__more">
          <p>
            <strong>{rule.name}.</strong> {rule.says}.
          </p>
          <p>{describeCheck(worst, plan, level)}</p>
          {others.map((check) => (
            <p key={`${check.subject}${check.required}`}>Also: {describeCheck(check, plan, level)}</p>
          ))}
          {worst.rule === 'moving-air' && <AirWay checks={[worst, ...others]} detectorId={detectorId} />}
          {worst.override && (
            <p>
              Published:{' '}
              {worst.override.published === null ? 'no figure' : formatRequired(worst.override.published, unit)}.{' '}
              {worst.override.note || 'No note.'}
            </p>
          )}
          <p className="soft">Source: {worst.source}</p>
          {sourceDoubts(rule.sources).map((doubt) => (
            <p key={doubt} className="source-doubt">
              {doubt}
            </p>
          ))}
        </div>
      </details>
    </li>
  );
}

/** Position of the notch, as a share of the bar's width: all notches are aligned. */
const NOTCH = 0.4;

/** A bar from zero to the measured distance, with a notch at the required one. A longer distance is cut at the end. */
function Bar({ check: { measured, required } }: { readonly check: Check }) {
  if (measured === null || required === null) return null;
  const share = required > 0 ? (measured / required) * NOTCH : 1;
  const style = { '--fill': `${Math.min(share, 1) * 100}%`, '--notch': `${NOTCH * 100}%` } as CSSProperties;
  return (
    <span className="bar" style={style} aria-hidden="true" data-over={share > 1 || undefined}>
      <span className="bar__fill" />
      <span className="bar__notch" />
    </span>
  );
}
