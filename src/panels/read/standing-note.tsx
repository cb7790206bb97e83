import type { Plan } from '../../../geometry/plan/model.ts';
import { STANDING_WORDS, type TestStanding } from '../../job/readings/judge.ts';
import { STAGE_PRESS, standingReasons } from '../../job/timing/standing.ts';
import { openStage } from '../ui.ts';
import { VerdictMark } from '../verdict-mark.tsx';

const HEAD = { 'not-evaluated': 'Not evaluated', unknown: 'Unknown' } as const;

/** Why the results of this test decide nothing, or not yet, and the way to what is missing. Nothing for a test that holds. */
export function StandingNote({ plan, standing }: { readonly plan: Plan; readonly standing: TestStanding }) {
  if (standing === 'holds') return null;
  const reasons = standingReasons(plan);
  return (
    <section className="standing" data-standing={standing} aria-label="Whether this test holds">
      <h3 className="standing__head">
        <VerdictMark verdict={standing === 'unknown' ? 'unknown' : 'blocked'} />
        {HEAD[standing]}
      </h3>
      <p role="status">{STANDING_WORDS[standing]}</p>
      {(['time', 'house'] as const).map((stage) => {
        const here = reasons.filter((reason) => reason.stage === stage);
        if (here.length === 0) return null;
        return (
          <div key={stage} className="standing__reasons">
            {here.map(({ says }) => (
              <p key={says}>{says}</p>
            ))}
            <button type="button" className="button" onClick={() => openStage(stage)}>
              {STAGE_PRESS[stage]}
            </button>
          </div>
        );
      })}
    </section>
  );
}
