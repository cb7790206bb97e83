import type { Mm, Wall, WallSide } from '../../../geometry/plan/model.ts';
import { wallLength, withWallLength } from '../../../geometry/plan/stretch.ts';
import { wallFaceLength } from '../../../geometry/wall-face.ts';
import { thicknessRefusal, wallLengthRefusal } from '../../../geometry/words.ts';
import { withLevel } from '../../state/plan-edits.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useCalm } from '../calm.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useLevel } from '../use-level.ts';

const SIDES: readonly { readonly value: WallSide; readonly words: string }[] = [
  { value: 'auto', words: 'as drawn' },
  { value: 'outside', words: 'outside wall' },
  { value: 'inside', words: 'inside wall' },
];

export function WallFields({ wall }: { readonly wall: Wall }) {
  const level = useLevel();
  const model = useCalm(selectModel);
  const unit = useAppStore((state) => state.plan.display.length);
  const { run, updateItem } = useAppStore.getState();
  const whole = wallLength(wall);
  const face = wallFaceLength(model, wall);
  const lengthen = (mm: Mm) => {
    const refusal = wallLengthRefusal(
      mm,
      level.openings.filter((each) => each.wall === wall.id),
      unit,
    );
    if (refusal) return refusal;
    return run((plan) => withLevel(plan, level.id, (each) => withWallLength(each, wall.id, mm)));
  };
  return (
    <div className="fields">
      {face !== null && (
        <LengthField label="Along its face, as taped" value={face} onCommit={(mm) => lengthen(whole + mm - face)} />
      )}
      <LengthField label="Middle to middle" value={whole} onCommit={lengthen} />
      <LengthField
        label="Thickness"
        value={wall.thickness}
        bare="small"
        onCommit={(mm) => {
          const refusal = thicknessRefusal(mm, unit);
          if (refusal) return refusal;
          return updateItem(wall.id, { thickness: mm });
        }}
      />
      <div className="wide">
        <ChoiceField
          label="Outside or inside"
          value={wall.side}
          choices={SIDES}
          hint="As drawn: outside where nothing closed lies behind it. Say inside where the neighbour's house adjoins."
          onCommit={(side) => updateItem(wall.id, { side })}
        />
      </div>
    </div>
  );
}
