import type { RadonUnit } from '../../../geometry/plan/model.ts';
import { sourceDoubts } from '../../../geometry/words/sources.ts';
import { ACTION_LEVELS, levelInPicocuries, reaches } from '../../job/readings/action-levels.ts';
import type { Exact } from '../../job/readings/exact.ts';
import { enteredText, radonText } from '../../job/readings/radon.ts';
import { tied } from './tied.ts';

/** A result beside the levels of several authorities, each judged in the unit in which it is published. */
export function LevelsTable({ result, unit }: { readonly result: Exact; readonly unit: RadonUnit }) {
  return (
    <details className="group">
      <summary>Beside the levels of others</summary>
      <table className="levels">
        <thead>
          <tr>
            <th scope="col">Authority and its level</th>
            <th scope="col">Here</th>
          </tr>
        </thead>
        <tbody>
          {ACTION_LEVELS.map((level) => (
            <tr key={level.id} data-reached={reaches(result, level) || undefined}>
              <th scope="row">
                {level.authority}
                <span className="levels__level">
                  {tied(enteredText(level))}
                  {level.unit !== unit && tied(` (${radonText(levelInPicocuries(level), unit)})`)}
                </span>
              </th>
              <td>{reaches(result, level) ? 'reached' : 'below'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small soft">
        Those in Bq/m³ are meant for the mean of a year, which a short test is not.{' '}
        {sourceDoubts(ACTION_LEVELS.map(({ source }) => source)).join(' ')}
      </p>
    </details>
  );
}
