import { useState } from 'react';
import type { Mm, XY } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { useAppStore } from '../../state/store.ts';
import './move-buttons.css';

/** Steps of the buttons, mm: an inch and a foot; a centimeter and ten. */
const STEPS = { 'feet-inches': [25.4, 304.8], metric: [10, 100] } as const;

const WAYS: readonly { readonly name: string; readonly sign: string; readonly toward: XY }[] = [
  { name: 'left', sign: '←', toward: [-1, 0] },
  { name: 'up', sign: '↑', toward: [0, -1] },
  { name: 'down', sign: '↓', toward: [0, 1] },
  { name: 'right', sign: '→', toward: [1, 0] },
];

/** Moves what is selected by a small or a large step, for a finger that cannot point as finely. */
export function MoveButtons() {
  const unit = useAppStore((state) => state.plan.display.length);
  const nudge = useAppStore((state) => state.nudge);
  const [small, large] = STEPS[unit];
  const [isLarge, setLarge] = useState(false);
  const step: Mm = isLarge ? large : small;
  const words = formatMeasured(step, unit);
  return (
    <fieldset className="move-buttons wide">
      <legend>Move by a step</legend>
      {WAYS.map(({ name, sign, toward: [dx, dy] }) => (
        <button
          key={name}
          type="button"
          className="button"
          aria-label={`Move ${name} by ${words}`}
          onClick={() => nudge(dx * step, dy * step)}
        >
          {sign}
        </button>
      ))}
      {[small, large].map((mm) => (
        <button
          key={mm}
          type="button"
          className="button"
          aria-pressed={mm === step}
          onClick={() => setLarge(mm === large)}
        >
          {formatMeasured(mm, unit)}
        </button>
      ))}
    </fieldset>
  );
}
