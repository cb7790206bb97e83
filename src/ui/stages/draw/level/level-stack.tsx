import { levelBar } from '../../../../../geometry/check/level.ts';
import { levelsBeside, levelsInOrder } from '../../../../../geometry/edit/index.ts';
import { counted, TONE_WORD, worstTone } from '../../../../../geometry/messages/index.ts';
import { levelHeading } from '../../../../../geometry/plan/nouns.ts';
import { checkedLevels } from '../../../../state/selectors.ts';
import { useAppStore } from '../../../../state/store.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';
import { useLevel } from '../../../hooks/use-level.ts';
import { VerdictMark } from '../../../verdict/verdict-mark.tsx';

/** The levels as a section through the house, the highest on top. A press shows a level; the buttons below move the level in view. */
export function LevelStack() {
  const plan = useAppStore((state) => state.plan);
  const shown = useLevel();
  const { setLevel, moveLevel } = useAppStore.getState();
  const levels = checkedLevels(plan).toReversed();
  return (
    <>
      <ol className="stack" aria-label="Levels, highest first">
        {levels.map(({ model: { level }, reports }) => {
          const tone = worstTone(reports);
          const detectors = reports.length > 0 ? counted(reports.length, 'detector') : 'no detector';
          return (
            <li key={level.id}>
              <button
                type="button"
                className="story"
                aria-current={level.id === shown.id}
                onClick={() => setLevel(level.id)}
              >
                <span className="story__name">{levelHeading(level)}</span>
                <span className="story__verdict">
                  {tone && <VerdictMark verdict={tone} size={16} />}
                  {tone ? `${detectors}, ${TONE_WORD[tone]}` : detectors}
                </span>
                <span className="story__bar">{levelBar(plan, level) || 'A level to test.'}</span>
              </button>
            </li>
          );
        })}
      </ol>
      {levels.length > 1 && (
        <>
          <div className="buttons">
            <button type="button" className="button" onClick={() => moveLevel('above')}>
              Move it up
            </button>
            <button type="button" className="button" onClick={() => moveLevel('below')}>
              Move it down
            </button>
          </div>
          <HeightMate />
        </>
      )}
    </>
  );
}

/** Puts two levels at the same height, as in a split-level house. The rules on which level to test then treat them alike. */
function HeightMate() {
  const plan = useAppStore((state) => state.plan);
  const level = useLevel();
  const { moveLevel, putLevelWith } = useAppStore.getState();
  const [mate] = levelsBeside(plan, level.id);
  const others = levelsInOrder(plan).filter(({ id }) => id !== level.id);
  return (
    <ChoiceField
      label="At the same height as"
      value={mate?.id ?? ''}
      choices={[
        { value: '', words: 'No other level' },
        ...others.map((other) => ({ value: other.id, words: levelHeading(other) })),
      ]}
      onCommit={(id) => (id ? putLevelWith(id) : moveLevel('above'))}
    />
  );
}
