import { type CSSProperties, useId } from 'react';
import type { Mm } from '../../../../geometry/plan/model.ts';
import { formatMeasured, type LengthUnit } from '../../../../geometry/units/index.ts';
import type { HeightLane } from '../../../advice/heights.ts';
import { HATCHES } from '../../../theme/hatches.ts';

/** A column of the scale: the allowed heights at a place, and the height of the detector there. */
export interface DrawnLane {
  readonly name: string;
  readonly lane: HeightLane;
  /** Height of the underside of the detector there, mm; null for none. */
  readonly base: Mm | null;
}

interface Props {
  readonly ceiling: Mm;
  /** The height that the sheet is shaded for. */
  readonly shaded: Mm;
  readonly lanes: readonly DrawnLane[];
  readonly unit: LengthUnit;
}

/** Sizes of the scale, px. The slider beside it covers the same range: from floor to ceiling, less half its knob at each end. */
const SCALE_PX = { height: 236, knob: 28 } as const;
const LANES = { left: 48, width: 32, gap: 18 } as const;
const WIDTH = 138;
/** Maximum length of a name, characters: a longer name is cut, and is in full in the text below. */
const LONGEST_NAME = 7;
/** Minimum height of an allowed interval as drawn, px. */
const THINNEST = 3;

/** A scale from floor to ceiling, like a leveling staff: white is allowed, hatched is not. */
export function HeightScale({ ceiling, shaded, lanes, unit }: Props) {
  const hatchId = useId();
  const y = (mm: Mm) => SCALE_PX.knob / 2 + (1 - mm / ceiling) * (SCALE_PX.height - SCALE_PX.knob);
  const { width, height, stroke, weight, turn } = HATCHES.height;
  return (
    <svg
      className="staff"
      width={WIDTH}
      height={SCALE_PX.height}
      viewBox={`0 0 ${WIDTH} ${SCALE_PX.height}`}
      role="img"
      aria-label={scaleLabel(lanes)}
    >
      <defs>
        <pattern
          id={hatchId}
          width={width}
          height={height / 2}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${turn})`}
        >
          <path d={stroke} transform="scale(1 0.5)" strokeWidth={weight} className="staff__hatch" />
        </pattern>
      </defs>
      <Ticks ceiling={ceiling} unit={unit} y={y} />
      {lanes.map((drawn, index) => (
        <Lane
          key={drawn.name}
          drawn={drawn}
          x={LANES.left + index * (LANES.width + LANES.gap)}
          ceiling={ceiling}
          y={y}
          hatchId={hatchId}
        />
      ))}
      <path d={`M0 ${y(shaded)}H${WIDTH}`} className="staff__shaded" />
    </svg>
  );
}

interface LaneProps {
  readonly drawn: DrawnLane;
  /** Left edge, px. */
  readonly x: number;
  readonly ceiling: Mm;
  readonly y: (mm: Mm) => number;
  readonly hatchId: string;
}

/** A column of the scale: hatched except for the allowed heights. */
function Lane({ drawn: { name, lane, base }, x, ceiling, y, hatchId }: LaneProps) {
  return (
    <g>
      <text x={x + LANES.width / 2} y={y(ceiling) - 4} className="staff__name">
        {name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name}
      </text>
      <rect x={x} y={y(ceiling)} width={LANES.width} height={y(0) - y(ceiling)} className="staff__ground" />
      <rect
        x={x}
        y={y(ceiling)}
        width={LANES.width}
        height={y(0) - y(ceiling)}
        fill={`url(#${hatchId})`}
        className="staff__edge"
      />
      {lane.intervals.map(({ from, to }) => (
        <rect
          key={from}
          x={x}
          y={y(to) - Math.max(0, THINNEST - (y(from) - y(to)))}
          width={LANES.width}
          height={Math.max(THINNEST, y(from) - y(to))}
          className="staff__allowed"
        />
      ))}
      {base !== null && (
        <rect x={x + 6} y={y(base) - 6} width={LANES.width - 12} height={6} className="staff__detector" />
      )}
    </g>
  );
}

/** A tick at every foot or quarter meter, every second one with its height. */
function Ticks({ ceiling, unit, y }: Pick<Props, 'ceiling' | 'unit'> & { readonly y: (mm: Mm) => number }) {
  const step = unit === 'metric' ? 250 : 304.8;
  const heights = Array.from({ length: Math.floor(ceiling / step) + 1 }, (_, index) => index * step);
  return (
    <g className="staff__ticks">
      {heights.map((mm, index) => (
        <path key={mm} d={`M${LANES.left - (index % 2 === 0 ? 10 : 6)} ${y(mm)}H${LANES.left - 2}`} />
      ))}
      {heights.map((mm, index) =>
        index % 2 === 0 ? (
          <text key={mm} x={LANES.left - 13} y={y(mm) + 4}>
            {mm === 0 ? 'floor' : formatMeasured(mm, unit)}
          </text>
        ) : null,
      )}
    </g>
  );
}

function scaleLabel(lanes: readonly DrawnLane[]): string {
  const parts = lanes.map(({ name, lane }) => {
    const stretches = lane.words.map(({ lowest, highest }) => (highest ? `${lowest} to ${highest}` : lowest));
    return `${name}: ${stretches.length > 0 ? stretches.join(', ') : 'no height'}.`;
  });
  return ['Allowed heights from floor to ceiling.', ...parts].join(' ');
}

/** Passes the sizes of the scale to the style of the slider. */
export const SCALE_STYLE = {
  '--staff-height': `${SCALE_PX.height}px`,
  '--staff-knob': `${SCALE_PX.knob}px`,
} as CSSProperties;
