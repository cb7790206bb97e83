import { moveToGap, SIDES, type Side, wallGaps } from '../../../geometry/dimension/wall-gaps.ts';
import { gapRefusal } from '../../../geometry/messages/index.ts';
import type { Mm, XY } from '../../../geometry/plan/model.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useThrottled } from '../hooks/use-throttled.ts';

interface Props {
  readonly middle: XY;
  /** From the middle to the edge on each side, mm. */
  readonly reach: Readonly<Record<Side, Mm>>;
}

const WORDS: Readonly<Record<Side, string>> = {
  left: 'On the left',
  right: 'On the right',
  up: 'Up the page',
  down: 'Down the page',
};

/** The taped place of an item: distances from its edges to the wall faces around it. Typing a length moves it. */
export function PlaceFields({ middle, reach }: Props) {
  const model = useThrottled(selectModel);
  const unit = useAppStore((state) => state.plan.display.length);
  const nudge = useAppStore((state) => state.nudge);
  const gaps = wallGaps(model, middle, reach);
  if (SIDES.every((side) => gaps[side] === null)) return null;
  return (
    <FieldGroup name="From its edge to the wall">
      {SIDES.map((side) => {
        const gap = gaps[side];
        if (gap === null) return null;
        return (
          <LengthField
            key={side}
            label={WORDS[side]}
            value={gap}
            onCommit={(wanted) => gapRefusal(gaps, side, wanted, unit) || nudge(...moveToGap(side, gap, wanted))}
          />
        );
      })}
    </FieldGroup>
  );
}
