import { describeSources } from '../../../geometry/messages/sources.ts';
import { COUNTED_FROM, describeCount, describeRequirement } from '../../protocol/quality/describe-quality.ts';
import { type QcCount, type QualityBook, UNDATED } from '../../protocol/quality/quality-book.ts';
import { countTable } from '../../protocol/quality/quality-csv.ts';
import { BLANKS, DUPLICATES, type QcRequirement, SPIKES } from '../../protocol/quality/requirements.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { saveTable } from './book-files.ts';
import { Scroller } from './scroller.tsx';

interface Props {
  readonly book: QualityBook;
  readonly say: (text: string) => void;
}

const DUTIES = [DUPLICATES, BLANKS, SPIKES] as const;

/** Pairs, blanks and spikes done and required, by month and kind of device, and the spikes of the year. */
export function Duties({ book, say }: Props) {
  const { months } = book;
  return (
    <section aria-label="Completed, required, outstanding" className="book__part">
      <h3>Completed, required, outstanding</h3>
      <ul className="small">
        {DUTIES.map((duty) => (
          <li key={duty.name}>{describeRequirement(duty)}</li>
        ))}
        <li>{COUNTED_FROM}</li>
      </ul>
      {months.length === 0 ? (
        <p>Nothing is measured yet: no plan has a result.</p>
      ) : (
        <>
          <MonthTable book={book} />
          <button
            type="button"
            className="button book__save"
            onClick={() => say(saveTable('quality-months', countTable(book)))}
          >
            Save the months as a table (CSV)
          </button>
        </>
      )}
      <details className="small soft">
        <summary>Sources of what is required</summary>
        <ul>
          {DUTIES.map(({ name, sources }) => (
            <li key={name}>
              {name}: {describeSources(sources)}
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

function MonthTable({ book: { months, years } }: Pick<Props, 'book'>) {
  return (
    <Scroller name="By month">
      <table className="book__table book__table--stacks">
        <thead>
          <tr>
            <th scope="col">Month</th>
            <th scope="col">Kind of device</th>
            <th scope="col">Locations</th>
            {DUTIES.map(({ name }) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {years.map(({ year, device, spikes }) => (
            <tr key={`${year} ${device}`} className="book__year">
              <th scope="row" className="book__when">
                Year {year}
              </th>
              <td>{device}</td>
              <td />
              <td />
              <td />
              <Count duty={SPIKES} count={spikes} />
            </tr>
          ))}
          {months.map(({ month, device, measurements, awaited, duplicates, blanks, spikes }) => (
            <tr key={`${month} ${device}`}>
              <th scope="row" className="book__when">
                {month === UNDATED ? 'No date' : month}
              </th>
              <td>{device}</td>
              <td>
                {measurements} measured{awaited > 0 && `, ${awaited} awaiting results`}
              </td>
              <Count duty={DUPLICATES} count={duplicates} />
              <Count duty={BLANKS} count={blanks} />
              <Count duty={SPIKES} count={spikes} />
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}

function Count({ duty, count }: { readonly duty: QcRequirement; readonly count: QcCount }) {
  const verdict = count.done < count.required ? 'tight' : 'clear';
  return (
    <td data-head={duty.name}>
      <span className="book__count" data-verdict={verdict}>
        <VerdictMark verdict={verdict} size={16} /> {describeCount(count)}
      </span>
    </td>
  );
}
