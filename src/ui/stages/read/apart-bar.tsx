import { asNumber, type Exact } from '../../../protocol/results/exact.ts';
import type { PrecisionBand } from '../../../protocol/results/precision.ts';

interface Props {
  /** Percent of the mean. */
  readonly rpd: Exact;
  readonly band: PrecisionBand;
}

/** How far two results are apart beside the two limits of their band. The words beside it say all of it. */
export function ApartBar({ rpd, band: { warning, control } }: Props) {
  const found = asNumber(rpd);
  const most = Math.max(found, control ?? warning) * 1.15;
  const share = (percent: number) => `${(100 * percent) / most}%`;
  return (
    <div className="apart" aria-hidden="true">
      <div className="apart__track">
        <span className="apart__fill" style={{ width: share(found) }} />
        <span className="apart__limit" style={{ left: share(warning) }} />
        {control !== null && <span className="apart__limit apart__limit--control" style={{ left: share(control) }} />}
      </div>
      <div className="apart__scale small soft">
        <span style={{ left: share(warning) }}>{control === null ? `${warning}%` : warning}</span>
        {control !== null && <span style={{ left: share(control) }}>{control}%</span>}
      </div>
    </div>
  );
}
