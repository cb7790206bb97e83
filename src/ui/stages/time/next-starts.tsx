import { useEffect, useId, useRef, useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { instantText, type Ms } from '../../../protocol/timing/clock.ts';
import { hoursAreKnown } from '../../../protocol/timing/exposure-limits.ts';
import { formatDay, formatInstant, formatShortInstant } from '../../../protocol/timing/format-time.ts';
import { type DayProposal, proposeStarts, type Shift } from '../../../protocol/timing/propose-starts.ts';
import { formatSpan } from '../../../protocol/timing/timeline.ts';

/** Number of days that are shown. */
const SHOWN = 6;

/** The next starts that meet every limit, with the hours in which the detectors can then be picked up; and why a day has none. */
export function NextStarts({ plan, onTake }: { readonly plan: Plan; readonly onTake: (start: string) => void }) {
  // Time of opening the list, or of a press on its button: the list must not change while the user reads it.
  const [now, setNow] = useState<Ms | null>(null);
  // Gets the focus, because the button that opened the list is removed.
  const id = useId();
  const list = useRef<HTMLElement>(null);
  const asked = now !== null;
  useEffect(() => {
    if (asked) list.current?.focus();
  }, [asked]);
  const { timeZone } = plan.site;
  if (now === null) {
    return (
      <button type="button" className="button" onClick={() => setNow(Date.now())}>
        When could it start?
      </button>
    );
  }
  const days = proposeStarts(plan, now).slice(0, SHOWN);
  return (
    <section ref={list} tabIndex={-1} className="starts" aria-label="When it could start">
      <p className="small">
        {plan.visit.closedSince ? 'With the house closed as recorded' : 'If the house is closed now'}, by your working
        hours:
      </p>
      {!hoursAreKnown(plan) && (
        <p className="small">
          Assumed, not entered: the kit is exposed for {plan.kit.minimumHours} to {plan.kit.maximumHours} h.
        </p>
      )}
      {days.length === 0 && <p>No working hours in the next days. Review the hours below.</p>}
      <ul>
        {days.map((day) =>
          day.ok ? (
            <li key={day.day}>
              <ProposedStart id={`${id}-${day.day}`} proposal={day.proposal} zone={timeZone} onTake={onTake} />
            </li>
          ) : (
            <li key={day.day} className="soft">
              {formatDay(day.day, timeZone)}: {day.reason}.
            </li>
          ),
        )}
      </ul>
      <button type="button" className="text-button" onClick={() => setNow(Date.now())}>
        Calculate from this minute
      </button>
    </section>
  );
}

interface ProposalProps {
  readonly id: string;
  readonly proposal: Extract<DayProposal, { ok: true }>['proposal'];
  readonly zone: string;
  readonly onTake: (start: string) => void;
}

/** A proposed start, the hours of its pick-up, and the button that takes it. */
function ProposedStart({ id, proposal, zone, onTake }: ProposalProps) {
  return (
    <>
      <p>
        <strong id={id}>{formatInstant(proposal.start, zone)}</strong>
      </p>
      <p className="small">
        Pick up:{' '}
        {proposal.pickUps.map((pickUp) => (
          <span key={pickUp.from} className="starts__pick-up">
            {pickUpWords(pickUp, zone)}
          </span>
        ))}
      </p>
      <button
        type="button"
        className="text-button"
        aria-describedby={id}
        onClick={() => onTake(instantText(proposal.start, zone))}
      >
        Take this start
      </button>
    </>
  );
}

/** Returns the hours of a pick-up in words, or its only minute. */
function pickUpWords({ from, to }: Shift, zone: string): string {
  return from === to ? `${formatShortInstant(from, zone)}, to the minute` : formatSpan({ from, to }, zone);
}
