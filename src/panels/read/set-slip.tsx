import type { Plan } from '../../../geometry/plan/model.ts';
import { sourceDoubts, sourceWords } from '../../../geometry/words/sources.ts';
import { ACTION_LEVELS, levelInPicocuries, reaches } from '../../job/readings/action-levels.ts';
import type { SetReport } from '../../job/readings/judge.ts';
import { radonBoth, radonText } from '../../job/readings/radon.ts';
import { describeSet, setName } from '../../job/readings/report.ts';

/** What the results of one location come to: the figure, the words, the levels of several authorities, the next step with its source. */
export function SetSlip({ plan, report }: { readonly plan: Plan; readonly report: SetReport }) {
  const { meanRounded, agreement, next } = report;
  const unit = plan.display.radon;
  const usable = meanRounded !== null && agreement !== 'straddles-by-two' && next.id !== 'not-evaluated';
  const lines = describeSet(plan, report).filter((line) => line !== next.says);
  return (
    <section className="set" aria-label={setName(report)} data-agreement={agreement}>
      <h3>{setName(report)}</h3>
      {usable && <p className="set__figure">{radonBoth(meanRounded, unit)}</p>}
      <p className="set__next">{next.says}</p>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {usable && (
        <details>
          <summary>Held against the levels of others</summary>
          <table className="set__levels">
            <thead>
              <tr>
                <th scope="col">Authority</th>
                <th scope="col">Level</th>
                <th scope="col">This result</th>
              </tr>
            </thead>
            <tbody>
              {ACTION_LEVELS.map((level) => (
                <tr key={level.id}>
                  <th scope="row">{level.authority}</th>
                  <td>{radonText(levelInPicocuries(level), unit)}</td>
                  <td>{reaches(meanRounded, level) ? 'at or above' : 'below'}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="small soft">
            Most of these are meant for the mean of a year; a short test is none.{' '}
            {sourceDoubts(ACTION_LEVELS.map(({ source }) => source)).join(' ')}
          </p>
        </details>
      )}
      <details className="small soft">
        <summary>Source</summary>
        {sourceWords(next.sources)}
      </details>
    </section>
  );
}
