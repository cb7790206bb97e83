import { useState } from 'react';
import type { Mm, XY } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { useAppStore } from '../../state/store.ts';
import './move-buttons.css';

/** Small and large step of the buttons, mm: 1 in and 1 ft; 1 cm and 10 cm. */
const STEPS = { 'feet-inches': [25.4, 304.8], metric: [10, 100] } as const;

const WAYS: readonly { readonly name: string; readonly sign: string; readonly toward: XY }[] = [
  { name: 'left', sign: '←', toward: [-1, 0] },
  { name: 'up', sign: '↑', toward: [0, -1] },
  { name: 'down', sign: '↓', toward: [0, 1] },
  { name: 'right', sign: '→', toward: [1, 0] },
];

/** Buttons that move the selection by a small or a large step, which a drag by finger is too coarse for. */
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
