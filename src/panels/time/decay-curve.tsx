import { DAY } from '../../job/timing/clock.ts';
import { errorGrowth, fractionLeft } from '../../job/timing/decay.ts';

/** The picture's own units. */
const SIZE = { width: 240, height: 96, days: 10 } as const;
const at = (days: number): string =>
  `${(SIZE.width * days) / SIZE.days},${SIZE.height * (1 - fractionLeft(days * DAY))}`;

/** How much of what the charcoal holds is left when the laboratory counts it, with the kit's limit marked. */
export function DecayCurve({ labDays }: { readonly labDays: number }) {
  const points = Array.from({ length: 41 }, (_, i) => at((i * SIZE.days) / 40)).join(' ');
  const left = fractionLeft(labDays * DAY);
  const x = (SIZE.width * Math.min(labDays, SIZE.days)) / SIZE.days;
  return (
    <figure className="decay">
      <svg
        viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
        role="img"
        aria-label="What is left of the radon, by days since the pick-up"
      >
        <polyline points={points} fill="none" stroke="currentColor" strokeWidth="2" />
        <line x1={x} y1={0} x2={x} y2={SIZE.height} stroke="currentColor" strokeWidth="1" strokeDasharray="4 3" />
      </svg>
      <figcaption className="small soft">
        After {labDays} days {Math.round(left * 100)} % is left, and the counting error is{' '}
        {errorGrowth(labDays * DAY).toFixed(1)} times that of the first hour. Half is gone in under four days: post on
        the day of the pick-up.
      </figcaption>
    </figure>
  );
}
