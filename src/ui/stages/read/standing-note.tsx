import { openStage } from '../../../commands/panels.ts';
import { STAGE_BUTTON, type TestState, VALIDITY_HEADLINE, VALIDITY_TEXT } from '../../../protocol/validity/validity.ts';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';
import './standing-note.css';

/** Why the results of this test decide nothing, or not yet, with a button to what is missing. For a valid test only its remarks. */
export function StandingNote({ state: { validity, issues, notes } }: { readonly state: TestState }) {
  if (validity === 'holds' && notes.length === 0) return null;
  const stages = [...new Set(issues.map(({ stage }) => stage))];
  const mark = { holds: 'tight', unknown: 'unknown', 'not-evaluated': 'blocked' } as const;
  return (
    <section className="standing" data-standing={validity} aria-label="Validity of this test">
      <h3 className="standing__head">
        <VerdictMark verdict={mark[validity]} />
        {VALIDITY_HEADLINE[validity]}
      </h3>
      <p>{VALIDITY_TEXT[validity]}</p>
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
    </section>
  );
}
