import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import type { XY } from '../../../../geometry/plan/model.ts';
import { atBearing, bearing, fullTurn } from '../../../../geometry/plane/bearing.ts';

interface Props {
  /** Degrees clockwise from straight up the page; null: not known. */
  readonly north: number | null;
  readonly onCommit: (north: number) => void;
}

/** Size of the drawing, px, which is shown at 100%. */
const SIZE = 140;
const MIDDLE: XY = [SIZE / 2, SIZE / 2];
const RIM = 66;
const KNOB = { at: 48, radius: 13 } as const;
/** Distance from the middle of the dial to that of the figure, px: half of its width clears the needle and the ticks. */
const DEGREES_AT = 31;
const TICK = { every: 15, long: 10, short: 5 } as const;

/** Degrees by which a key turns N, clockwise. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 15,
  PageDown: -15,
};

/** The page as a dial whose N is turned to north, by mouse, finger or keys. The plan changes on release. */
export function Compass({ north, onCommit }: Props) {
  // Set while it is being turned.
  const [turned, setTurned] = useState<number | null>(null);
  const shown = turned ?? north;
  const commit = (degrees: number | null) => {
    if (degrees !== null && degrees !== north) onCommit(degrees);
    setTurned(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    if (event.key === 'Escape' && turned !== null) setTurned(null);
    else if (event.key === 'Home') setTurned(0);
    // Marks the shown direction as known.
    else if (event.key === 'Enter' || event.key === ' ') setTurned(shown ?? 0);
    else if (step !== undefined) setTurned(fullTurn(Math.round(shown ?? 0) + step));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      className="compass"
      data-unknown={shown === null || undefined}
      role="slider"
      tabIndex={0}
      aria-label="Compass rose: turn N to north"
      aria-valuemin={0}
      aria-valuemax={359}
      aria-valuenow={Math.round(shown ?? 0)}
      aria-valuetext={shown === null ? 'North is not known' : `${degreesOf(shown)} clockwise from up the page`}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setTurned(degreesAt(event));
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) setTurned(degreesAt(event));
      }}
      // The last move may not be rendered yet.
      onPointerUp={(event) => turned !== null && commit(degreesAt(event))}
      onPointerCancel={() => setTurned(null)}
      onKeyDown={onKeyDown}
      onKeyUp={() => commit(turned)}
      onBlur={() => commit(turned)}
    >
      <svg width={SIZE} height={SIZE} viewBox={`0 0 ${SIZE} ${SIZE}`} aria-hidden="true">
        <Dial />
        <Needle north={shown} />
      </svg>
      <Grip north={shown} />
    </div>
  );
}

/** Returns the direction of the pointer from the middle of the dial, in whole degrees clockwise from up. */
function degreesAt({ currentTarget, clientX, clientY }: PointerEvent<HTMLElement>): number {
  const { left, top } = currentTarget.getBoundingClientRect();
  return fullTurn(Math.round(bearing(MIDDLE, [clientX - left, clientY - top])));
}

const degreesOf = (north: number): string => `${Math.round(north * 10) / 10}°`;

/** The rim with its ticks, and the page in it, which shows what is up. */
function Dial() {
  const [x, y] = MIDDLE;
  const ticks = Array.from({ length: 360 / TICK.every }, (_, index) => {
    const degrees = index * TICK.every;
    const [from, to] = [RIM, RIM - (degrees % 90 === 0 ? TICK.long : TICK.short)].map((far) =>
      atBearing(MIDDLE, degrees, far),
    );
    return `M${from}L${to}`;
  });
  return (
    <>
      <circle cx={x} cy={y} r={RIM} className="compass__rim" />
      <path d={ticks.join('')} className="compass__ticks" />
      <rect x={x - 17} y={y - 22} width={34} height={44} className="compass__page" />
      <path d={`M${x - 5} ${y - 12}l5 -6l5 6`} className="compass__up" />
    </>
  );
}

/** The only part that a finger drags in every direction: elsewhere on the dial it scrolls the column. */
function Grip({ north }: { readonly north: number | null }) {
  const [left, top] = atBearing(MIDDLE, north ?? 0, KNOB.at);
  return <span className="compass__grip" style={{ left, top }} />;
}

function Needle({ north }: { readonly north: number | null }) {
  const [kx, ky] = atBearing(MIDDLE, north ?? 0, KNOB.at);
  const [fx, fy] = atBearing(MIDDLE, (north ?? 0) + 180, 30);
  // Beside the needle, on its lower side, because the mark for up is above.
  const [dx, dy] = atBearing(MIDDLE, (north ?? 0) + ((north ?? 0) <= 180 ? 90 : -90), DEGREES_AT);
  return (
    <>
      {north !== null && <path d={`M${fx} ${fy}L${kx} ${ky}`} className="compass__needle" />}
      <circle cx={kx} cy={ky} r={KNOB.radius} className="compass__knob" />
      <text x={kx} y={ky} className="compass__letter">
        {north === null ? '?' : 'N'}
      </text>
      <text x={dx} y={dy} className="compass__degrees">
        {north === null ? '' : degreesOf(north)}
      </text>
    </>
  );
}
