import { TAPED_BY } from '../../../geometry/dimension/taped-by.ts';
import { withThicknessMeasured } from '../../../geometry/edit/wall-thickness.ts';
import { thicknessRefusal } from '../../../geometry/messages/index.ts';
import { TAPED_BY_NAME } from '../../../geometry/messages/taped-by.ts';
import type { Mm } from '../../../geometry/plan/model.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { withSaid } from '../../state/wall-settings.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';

const ASSUMED = 'Assumed. Measure it at a door or a window.';

/** Fields for the taped face and the thickness of the next walls: shown before the first wall and while walls are drawn. */
export function WallSettingsFields() {
  const unit = useAppStore((state) => state.plan.display.length);
  const settings = useAppStore((state) => state.wallSettings);
  const levelId = useAppStore((state) => selectLevel(state).id);
  const { setWallSettings } = useAppStore.getState();
  const { by, outer, partition, said } = settings;
  const assumed = (['outer', 'partition'] as const).filter((each) => !said.includes(each));
  const setThickness = (change: { readonly outer?: Mm; readonly partition?: Mm }) => {
    const refusal = thicknessRefusal(change.outer ?? change.partition ?? 0, unit);
    if (!refusal) setWallSettings(withSaid(settings, change));
    return refusal;
  };
  return (
    <FieldGroup name="The next walls">
      <div className="wide">
        <ChoiceField
          label="Lengths are taped"
          value={by}
          choices={TAPED_BY.map((value) => ({ value, words: TAPED_BY_NAME[value] }))}
          onCommit={(chosen) => setWallSettings(withSaid(settings, { by: chosen }))}
        />
      </div>
      <LengthField
        label="Exterior walls, thick"
        value={outer}
        bare="small"
        {...(said.includes('outer') ? {} : { hint: ASSUMED })}
        onCommit={(mm) => setThickness({ outer: mm })}
      />
      <LengthField
        label="Partitions, thick"
        value={partition}
        bare="small"
        {...(said.includes('partition') ? {} : { hint: ASSUMED })}
        onCommit={(mm) => setThickness({ partition: mm })}
      />
      {assumed.length > 0 && (
        <button
          type="button"
          className="text-button wide"
          onClick={() => {
            setWallSettings(withSaid(settings, { outer, partition }));
            useAppStore.getState().run((plan) => withThicknessMeasured(plan, levelId, [outer, partition]));
          }}
        >
          Both are measured
        </button>
      )}
    </FieldGroup>
  );
}
