import { openStage } from '../../../commands/panels.ts';
import { STAGE_PRESS, STANDING_HEAD, STANDING_WORDS, type TestState } from '../../../protocol/standing/types.ts';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';
import './standing-note.css';

/** Why the results of this test decide nothing, or not yet, and the way to what is missing. Of a test that holds only what has to be said beside it. */
export function StandingNote({ state: { test, reasons, notes } }: { readonly state: TestState }) {
  if (test === 'holds' && notes.length === 0) return null;
  const stages = [...new Set(reasons.map(({ stage }) => stage))];
  const mark = { holds: 'tight', unknown: 'unknown', 'not-evaluated': 'blocked' } as const;
  return (
    <section className="standing" data-standing={test} aria-label="Whether this test holds">
      <h3 className="standing__head">
        <VerdictMark verdict={mark[test]} />
        {STANDING_HEAD[test]}
      </h3>
      <p role="status">{STANDING_WORDS[test]}</p>
      {stages.map((stage) => (
        <div key={stage} className="standing__reasons">
          {reasons
            .filter((reason) => reason.stage === stage)
            .map(({ says }) => (
              <p key={says}>{says}</p>
            ))}
          {stage !== 'read' && (
            <button type="button" className="button" onClick={() => openStage(stage)}>
              {STAGE_PRESS[stage]}
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
