import { TONE_WORD, worstTone } from '../../../geometry/messages/index.ts';
import { checkedLevels, hasLevelBelow, selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useLevel } from '../hooks/use-level.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { CommandButton } from './command-button.tsx';
import './foot.css';

/** The bar below the sheet: levels and view. */
export function Foot() {
  return (
    <div className="foot">
      <Levels />
      <View />
    </div>
  );
}

/** The levels: a press shows a level; the mark is the worst verdict of its detectors. */
function Levels() {
  const levels = checkedLevels(useAppStore((state) => state.plan));
  const shown = useLevel();
  const { setLevel } = useAppStore.getState();
  return (
    <fieldset
      className={levels.length > 1 ? 'foot__group' : 'foot__group foot__wide'}
      aria-label="Levels, lowest first"
    >
      {levels.map(({ model: { level }, reports }) => {
        const tone = worstTone(reports);
        return (
          <button
            key={level.id}
            type="button"
            className="button"
            aria-label={tone ? `${level.name.trim() || 'No name'}, ${TONE_WORD[tone]}` : undefined}
            aria-pressed={level.id === shown.id}
            onClick={() => setLevel(level.id)}
          >
            {tone && <VerdictMark verdict={tone} size={16} />}
            {level.name.trim() || 'No name'}
          </button>
        );
      })}
      <CommandButton command="add-level" className="button button--bare foot__wide foot__add" />
    </fieldset>
  );
}

function View() {
  const snap = useAppStore((state) => state.snap);
  const showBelow = useAppStore((state) => state.showBelow);
  const hasBelow = useAppStore(hasLevelBelow);
  const hasWalls = useAppStore((state) => selectLevel(state).walls.length > 0);
  const isAsking = useAppStore(({ tool }) => tool.kind === 'ask');
  return (
    <fieldset className="foot__group foot__view" aria-label="View">
      {hasWalls && (
        <CommandButton command="why-not-here" aria-pressed={isAsking}>
          Why not here?
        </CommandButton>
      )}
      {hasBelow && <CommandButton command="show-level-below" aria-pressed={showBelow} />}
      <CommandButton command="menu" aria-haspopup="menu" />
      <CommandButton command="snap" className="button foot__wide" aria-pressed={snap} />
      <CommandButton command="smaller">
        −<span className="unseen"> Smaller</span>
      </CommandButton>
      <CommandButton command="larger">
        +<span className="unseen"> Larger</span>
      </CommandButton>
      <CommandButton command="whole-level" />
    </fieldset>
  );
}
