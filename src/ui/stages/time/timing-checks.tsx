import { capital } from '../../../../geometry/messages/index.ts';
import { describeSources } from '../../../../geometry/messages/sources.ts';
import { TIMING_NAME } from '../../../protocol/timing/timing-check.ts';
import type { TimingReport } from '../../../protocol/timing/timing-report.ts';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';

/** Every time limit with its verdict, reason and source. */
export function TimingChecks({ report }: { readonly report: TimingReport }) {
  return (
    <ul className="timing">
      {report.checks.map(({ rule, verdict, detail, sources }) => (
        <li key={rule} className="timing__check" data-verdict={verdict}>
          <p className="timing__head">
            {verdict !== 'not-run' && <VerdictMark verdict={verdict} size={18} />}
            <strong>{TIMING_NAME[rule]}</strong> <span>{capital(verdict.replace('-', ' '))}</span>
          </p>
          <p>{detail}</p>
          <details className="small soft">
            <summary>Source</summary>
            {describeSources(sources)}
          </details>
        </li>
      ))}
    </ul>
  );
}
