import { counted } from '../../../geometry/messages/index.ts';
import { describeSources } from '../../../geometry/messages/sources.ts';
import type { ChartPoint, ControlChart } from '../../protocol/quality/control-charts.ts';
import {
  chartName,
  chartStatus,
  describeLimits,
  POINT_WORD,
  statisticName,
} from '../../protocol/quality/describe-quality.ts';
import { UNDATED } from '../../protocol/quality/quality-book.ts';
import { chartRows } from '../../protocol/quality/quality-csv.ts';
import { decimalText } from '../../protocol/results/exact.ts';
import {
  CHART_MM,
  describeChart,
  drawControlChart,
  PAGE_COLORS,
  pointMark,
  runRing,
} from '../../report/documents/control-chart.ts';
import { fileStem } from '../../storage/plan-files.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { saveChart, saveTable } from './book-files.ts';
import { Drawn } from './drawn.tsx';
import { Scroller } from './scroller.tsx';

interface Props {
  readonly chart: ControlChart;
  readonly say: (text: string) => void;
}

/** A control chart: its status, the crossed limits and what to do, the chart, and the same data as a table. */
export function ChartView({ chart, say }: Props) {
  const { band, points, flags } = chart;
  const name = chartName(chart);
  const { status, text } = chartStatus(chart);
  return (
    <section className="chart" aria-label={name} data-standing={status}>
      <h4 className="chart__head">
        {status !== 'not-run' && <VerdictMark verdict={status} />} {name}: {text}
      </h4>
      <p className="small">
        {counted(points.length, 'pair')}. {describeLimits(chart)}
      </p>
      {flags.length > 0 && (
        <ul className="chart__flags">
          {flags.map((flag) => (
            <li key={flag}>{flag}</li>
          ))}
        </ul>
      )}
      <Scroller name={`${name}, chart`}>
        <Drawn
          width={CHART_MM.width}
          height={CHART_MM.height}
          name={describeChart(chart)}
          drawing={drawControlChart(chart, PAGE_COLORS)}
        />
      </Scroller>
      {points.length > 0 && (
        <>
          <Key />
          <details>
            <summary>The pairs as a table</summary>
            <PairTable chart={chart} />
          </details>
          <div className="buttons book__save">
            <button type="button" className="button" onClick={() => void saveChart(chart).then(say)}>
              Save the chart as a drawing<span className="unseen">: {name}</span>
            </button>
            <button
              type="button"
              className="button"
              onClick={() => say(saveTable(fileStem(`pairs ${name}`), chartRows([chart])))}
            >
              Save the pairs as a table (CSV)<span className="unseen">: {name}</span>
            </button>
          </div>
        </>
      )}
      <p className="small soft">{describeSources(band.sources)}</p>
    </section>
  );
}

const KEY: readonly ChartPoint['verdict'][] = ['in-control', 'warning', 'out-of-control'];
const SIZE = 6;

/** The legend of the marks. */
function Key() {
  const middle = SIZE / 2;
  return (
    <ul className="chart__key small">
      {KEY.map((verdict) => (
        <li key={verdict}>
          <Drawn width={SIZE} height={SIZE} drawing={pointMark(verdict, middle, middle, PAGE_COLORS)} />{' '}
          {POINT_WORD[verdict]}
        </li>
      ))}
      <li>
        <Drawn width={SIZE} height={SIZE} drawing={runRing(middle, middle, PAGE_COLORS)} /> ends a run of warnings
      </li>
    </ul>
  );
}

function PairTable({ chart }: { readonly chart: ControlChart }) {
  const { band, points } = chart;
  return (
    <Scroller name={`${chartName(chart)}, pairs`}>
      <table className="book__table">
        <thead>
          <tr>
            <th scope="col">Pair</th>
            <th scope="col">Month</th>
            <th scope="col">Where</th>
            <th scope="col">Results, pCi/L</th>
            <th scope="col">Mean, pCi/L</th>
            <th scope="col">{statisticName(band)}</th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {points.map(({ pair, value, verdict, endsRun }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the place in the sequence is what tells the pairs apart
            <tr key={i} data-verdict={verdict}>
              <th scope="row">{i + 1}</th>
              <td className="book__when">{pair.month === UNDATED ? 'No date' : pair.month}</td>
              <td className="book__text">{pair.where}</td>
              <td>{pair.values.map((each) => decimalText(each, 1)).join(' and ')}</td>
              <td>{decimalText(pair.mean, 1)}</td>
              <td>{decimalText(value, 1)}</td>
              <td>
                {POINT_WORD[verdict]}
                {endsRun && ', ends a run'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  );
}
