import type { Plan } from '../../../../geometry/plan/model.ts';
import { type DecayCourse, type DecayMark, decayCourse } from '../../../protocol/timing/decay.ts';

/** The picture is 100 units wide and high: x to the right, y down. */
const SHARES = 100;
const LEVELS = [100, 50, 0] as const;

/** The share of radon left in the charcoal on its way to the laboratory, with the limit and the recorded times. */
export function DecayCurve({ plan }: { readonly plan: Plan }) {
  const course = decayCourse(plan);
  if (!course) return null;
  const { marks, notes, projected } = course;
  return (
    <section className="decay" aria-labelledby="decay-heading">
      <h3 id="decay-heading">Radon left at the laboratory</h3>
      {projected && <p>{notes[0]}</p>}
      <Picture course={course} />
      <ul className="decay__marks">
        {marks.map((mark) => (
          <li key={mark.kind}>
            <Glyph kind={mark.kind} />
            <span>{mark.text}.</span>
          </li>
        ))}
      </ul>
      {notes.slice(projected ? 1 : 0).map((words) => (
        <p key={words} className="small soft">
          {words}
        </p>
      ))}
    </section>
  );
}

function Picture({ course: { curve, ticks, marks, span } }: { readonly course: DecayCourse }) {
  const x = (days: number) => (SHARES * days) / span;
  const y = (left: number) => SHARES * (1 - left);
  const shown = marks.filter(({ days }) => days <= span);
  return (
    <div className="decay__picture" role="img" aria-label="Radon left, by days since the pick-up; in words below">
      <p className="small decay__axis">Radon left</p>
      <div className="decay__levels small" aria-hidden="true">
        {LEVELS.map((level) => (
          <span key={level} style={{ top: `${SHARES - level}%` }}>
            {level}%
          </span>
        ))}
      </div>
      <div className="decay__field">
        <svg viewBox={`0 0 ${SHARES} ${SHARES}`} preserveAspectRatio="none" aria-hidden="true">
          <line className="decay__half" x1={0} x2={SHARES} y1={50} y2={50} />
          {shown.map(({ kind, days }) => (
            <line key={kind} className="decay__line" data-kind={kind} x1={x(days)} x2={x(days)} y1={0} y2={SHARES} />
          ))}
          <polyline
            className="decay__curve"
            points={curve.map(({ days, left }) => `${x(days)},${y(left)}`).join(' ')}
          />
        </svg>
        {shown.map(({ kind, days, left }) => (
          <span key={kind} className="decay__point" style={{ left: `${x(days)}%`, top: `${y(left)}%` }}>
            <Glyph kind={kind} />
          </span>
        ))}
      </div>
      <div className="decay__ticks small" aria-hidden="true">
        {ticks.map(({ days, date }) => (
          <span key={days} style={{ left: `${x(days)}%` }}>
            {days}
            <br />
            {date}
          </span>
        ))}
      </div>
      <p className="small decay__axis decay__axis--days">Days since the pick-up</p>
    </div>
  );
}

/** A shape for each kind of mark, so that color is not the only sign: open for a deadline, filled for a recorded time. */
function Glyph({ kind }: { readonly kind: DecayMark['kind'] }) {
  return (
    <svg className="decay__glyph" data-kind={kind} viewBox="0 0 12 12" width="14" height="14" aria-hidden="true">
      {kind === 'posted' || kind === 'post-by' ? (
        <path d="M6 1 11 11H1Z" />
      ) : (
        <rect x="1.5" y="1.5" width="9" height="9" />
      )}
    </svg>
  );
}
