import { sourceDoubts } from '../../../../geometry/messages/sources.ts';
import type { RadonUnit } from '../../../../geometry/plan/test-record.ts';
import { unbrokenFigures } from '../../../../geometry/units/no-break.ts';
import { ACTION_LEVELS, levelInPicocuries, meanReaches } from '../../../protocol/results/action-levels.ts';
import type { Exact } from '../../../protocol/results/exact.ts';
import { radonText, unitText } from '../../../protocol/results/radon.ts';

/** Words for a level that is reached or not: some authorities count from the level on, some only above it. */
const HERE = { from: ['reached', 'below'], above: ['exceeded', 'not exceeded'] } as const;

/** An exact mean, pCi/L, compared with the levels of several authorities, each in its published unit and wording. */
export function LevelsTable({ mean, unit }: { readonly mean: Exact; readonly unit: RadonUnit }) {
  return (
    <details className="group">
      <summary>Action levels of other authorities</summary>
      <table className="levels">
        <thead>
          <tr>
            <th scope="col">Authority and its level</th>
            <th scope="col">Here</th>
          </tr>
        </thead>
        <tbody>
          {ACTION_LEVELS.map((level) => (
            <tr key={level.id} data-reached={meanReaches(mean, level) || undefined}>
              <th scope="row">
                {level.authority}
                <span className="levels__level">
                  {unbrokenFigures(`${level.value} ${unitText(level.unit)}`)}
                  {level.unit !== unit && unbrokenFigures(` (${radonText(levelInPicocuries(level), unit)})`)}
                </span>
              </th>
              <td>{HERE[level.counts][meanReaches(mean, level) ? 0 : 1]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small soft">
        Those in Bq/m³ apply to a yearly average, which a short-term test is not.{' '}
        {sourceDoubts(ACTION_LEVELS.map(({ source }) => source)).join(' ')}
      </p>
    </details>
  );
}
