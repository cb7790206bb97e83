import type { Plan } from '../../../../geometry/plan/model.ts';
import { openStage } from '../../../commands/panels.ts';
import { notRecorded } from '../../../protocol/required-items/not-recorded.ts';
import { STAGE_BUTTON, type TestState, validityWords } from '../../../protocol/validity/validity.ts';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';
import './standing-note.css';

interface Props {
  readonly plan: Plan;
  readonly state: TestState;
}

/**
 * Why the results of this test decide nothing, or not yet, with buttons that lead to missing entries. For a valid test, its remarks, and
 * the items that published lists require of its report and that are not recorded.
 */
export function StandingNote({ plan, state }: Props) {
  const { validity, issues, notes } = state;
  const gaps = validity === 'holds' ? notRecorded(plan) : null;
  if (gaps && notes.length === 0 && !gaps.short) return null;
  const words = validityWords(plan, state);
  const stages = [...new Set(issues.map(({ stage }) => stage))];
  const holds = notes.length > 0 ? 'tight' : 'clear';
  const mark = { holds, unknown: 'unknown', 'not-evaluated': 'blocked' } as const;
  return (
    <section className="standing" data-standing={validity} aria-label="Validity of this test">
      <h3 className="standing__head">
        <VerdictMark verdict={mark[validity]} />
        {words.head}
        {gaps?.short && `. ${gaps.short}`}
      </h3>
      <p>{words.text}</p>
      {stages.map((stage) => (
        <div key={stage} className="standing__reasons">
          {issues
            .filter((reason) => reason.stage === stage)
            .map(({ text }) => (
              <p key={text}>{text}</p>
            ))}
          {stage !== 'read' && (
            <button type="button" className="button" onClick={() => openStage(stage)}>
              {STAGE_BUTTON[stage]}
            </button>
          )}
        </div>
      ))}
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {gaps?.named && (
        <div className="standing__reasons">
          <p>{gaps.named}</p>
          <button type="button" className="button" onClick={() => openStage('sheet')}>
            Review the report
          </button>
        </div>
      )}
    </section>
  );
}
