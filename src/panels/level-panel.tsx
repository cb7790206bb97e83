import type { Ground, Level, Living } from '../../geometry/plan/model.ts';
import { capital, GROUND_PHRASE, LIVING_PHRASE } from '../../geometry/words.ts';
import { useAppStore } from '../state/store.ts';
import { ChoiceField } from './fields/choice-field.tsx';
import { LengthField } from './fields/length-field.tsx';
import { NumberField } from './fields/number-field.tsx';
import { TextField } from './fields/text-field.tsx';
import { useLevel } from './use-level.ts';

const choicesOf = <T extends string>(phrases: Readonly<Record<T, string>>) =>
  (Object.entries(phrases) as [T, string][]).map(([value, words]) => ({ value, words: capital(words) }));
const LIVINGS = choicesOf<Living>(LIVING_PHRASE);
const GROUNDS = choicesOf<Ground>(GROUND_PHRASE);
/** A crawlspace is seldom lower, a hall seldom higher, mm: refused beyond, for a slip of the unit is likelier. */
const CEILING = { least: 300, most: 12_000 } as const;

/** What is true of the whole level in view. */
export function LevelPanel() {
  const level = useLevel();
  const count = useAppStore((state) => state.plan.levels.length);
  const run = useAppStore((state) => state.run);
  const change = (patch: Partial<Level>) => {
    return run((plan) => ({
      ...plan,
      levels: plan.levels.map((each) => (each.id === level.id ? { ...each, ...patch } : each)),
    }));
  };
  const remove = () => {
    run((plan) => ({ ...plan, levels: plan.levels.filter(({ id }) => id !== level.id) }));
    useAppStore.getState().setLevel(useAppStore.getState().plan.levels[0]?.id ?? '');
    useAppStore
      .getState()
      .say(`${level.name || 'The level'} is taken out, with all that was on it. Undo brings it back.`);
  };
  return (
    <details className="group">
      <summary>
        This level: {level.name || 'no name'} <span className="soft">{LIVING_PHRASE[level.living]}</span>
      </summary>
      <div className="fields">
        <div className="wide">
          <TextField label="Name" value={level.name} onCommit={(name) => change({ name })} />
        </div>
        <div className="wide">
          <ChoiceField
            label="Lived in"
            value={level.living}
            choices={LIVINGS}
            onCommit={(living) => change({ living })}
          />
        </div>
        <div className="wide">
          <ChoiceField
            label="Under its floor"
            value={level.ground}
            choices={GROUNDS}
            onCommit={(ground) => change({ ground })}
          />
        </div>
        <LengthField
          label="Floor to ceiling"
          value={level.ceiling}
          onCommit={(mm) =>
            mm < CEILING.least || mm > CEILING.most
              ? 'A ceiling is 1 ft to 39 ft (30 cm to 12 m) above the floor. Look at the unit.'
              : change({ ceiling: mm })
          }
        />
        <NumberField
          label="Order, 0 is lowest"
          value={level.order}
          unit=""
          least={-20}
          most={20}
          onCommit={(order) =>
            Number.isInteger(order) ? change({ order: order ?? 0 }) : 'Levels are counted in whole numbers: 0, 1, 2.'
          }
        />
      </div>
      {count > 1 && (
        <button type="button" className="text-button" onClick={remove}>
          Take this level out
        </button>
      )}
    </details>
  );
}
