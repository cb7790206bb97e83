import { asNumber, type Exact } from '../../../protocol/results/exact.ts';
import type { PrecisionBand } from '../../../protocol/results/precision.ts';

interface Props {
  /** Relative percent difference: percent of the mean. */
  readonly rpd: Exact;
  readonly band: PrecisionBand;
}

/** The difference of two results compared with the two limits of their band. The text beside it says the same. */
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
