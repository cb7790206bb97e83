import { withCeiling, withGround, withLevel } from '../../../../../geometry/edit/index.ts';
import { capital, GROUND_PHRASE } from '../../../../../geometry/messages/index.ts';
import type { Ground, Level } from '../../../../../geometry/plan/model.ts';
import { levelHeading, levelName } from '../../../../../geometry/plan/nouns.ts';
import { formatMeasured } from '../../../../../geometry/units/index.ts';
import { LEVELS_GROUP } from '../../../../commands/go-to.ts';
import { ceilingRefusal } from '../../../../state/ceiling-range.ts';
import { useAppStore } from '../../../../state/store.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';
import { LengthField } from '../../../fields/length-field.tsx';
import { TextField } from '../../../fields/text-field.tsx';
import { useLevel } from '../../../hooks/use-level.ts';
import { CopyOutline } from './copy-outline.tsx';
import { LevelStack } from './level-stack.tsx';
import { LivingField, livingWords } from './living-field.tsx';
import './level-panel.css';

const GROUNDS = (Object.entries(GROUND_PHRASE) as [Ground, string][]).map(([value, words]) => ({
  value,
  words: capital(words),
}));

/** The levels of the house from top to bottom, and the fields of the level in view. */
export function LevelPanel() {
  const level = useLevel();
  const { addLevel, deleteLevel } = useAppStore.getState();
  const count = useAppStore((state) => state.plan.levels.length);
  return (
    <details className="group" id={LEVELS_GROUP}>
      <summary>
        Levels: {levelHeading(level)} <span className="soft">{livingWords(level)}</span>
      </summary>
      <div className="levels">
        <LevelStack />
        <div className="buttons">
          <button type="button" className="button" onClick={() => addLevel('above')}>
            Add one above
          </button>
          <button type="button" className="button" onClick={() => addLevel('below')}>
            Add one below
          </button>
        </div>
        <LevelFields level={level} />
        <CopyOutline />
        {count > 1 && (
          <button type="button" className="text-button" onClick={() => deleteLevel(level.id)}>
            Delete {levelName(level)}
          </button>
        )}
      </div>
    </details>
  );
}

/** Says that the ceiling height in the field is assumed, with a button that marks it as measured. */
function CeilingAssumed({ level }: { readonly level: Level }) {
  const run = useAppStore((state) => state.run);
  const unit = useAppStore((state) => state.plan.display.length);
  return (
    <>
      <p className="soft">Assumed, not measured: the distance to the ceiling is checked for low detectors only.</p>
      <button
        type="button"
        className="button"
        onClick={() => run((plan) => withCeiling(plan, level.id, level.ceiling))}
      >
        It is {formatMeasured(level.ceiling, unit)}: measured
      </button>
    </>
  );
}

function LevelFields({ level }: { readonly level: Level }) {
  const run = useAppStore((state) => state.run);
  const change = (patch: Partial<Level>) => run((plan) => withLevel(plan, level.id, patch));
  return (
    <div className="fields">
      <div className="wide">
        <TextField label="Name" value={level.name} onCommit={(name) => change({ name })} />
      </div>
      <div className="wide">
        <LivingField level={level} label="Lived in" />
      </div>
      <div className="wide">
        <ChoiceField
          label="Under its floor"
          value={level.groundAnswered === false ? null : level.ground}
          choices={GROUNDS}
          onCommit={(ground) => run((plan) => withGround(plan, level.id, ground))}
        />
      </div>
      <div className="wide">
        <LengthField
          label="Floor to ceiling"
          value={level.ceiling}
          onCommit={(mm) => ceilingRefusal(mm) || run((plan) => withCeiling(plan, level.id, mm))}
        />
        {level.ceilingAnswered === false && <CeilingAssumed level={level} />}
      </div>
    </div>
  );
}
