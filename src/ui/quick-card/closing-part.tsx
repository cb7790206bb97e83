import { useState } from 'react';
import { instantText, msOf } from '../../protocol/timing/clock.ts';
import { formatDuration } from '../../protocol/timing/format-time.ts';
import { CLOSED_BEFORE } from '../../protocol/timing/limits.ts';
import { hasBegun } from '../../quick-card/made-again.ts';
import { closedStill, closingProposals } from '../../quick-card/schedule.ts';
import { formatForOccupants } from '../../report/documents/format-times.ts';
import { useAppStore } from '../../state/store.ts';
import { InstantField } from '../fields/instant-field.tsx';
import { ChoiceRow } from './choice-row.tsx';
import { answer, useQuickCard } from './quick-card-store.ts';

const TITLE = '5. When can you close the house?';

/** Asks when the house can be closed, evenings and weekends included. Not asked once the test has begun. */
export function ClosingPart() {
  const closing = useQuickCard(({ answers }) => answers.closing);
  const plan = useAppStore((state) => state.plan);
  const zone = plan.site.timeZone;
  const [now] = useState(Date.now);
  const remakes = useQuickCard((state) => state.remakes);
  const closed = remakes ? closedStill(plan.visit) : null;
  const choices = [
    ...(closed === null ? [] : [{ words: 'It is closed already, since', at: closed }]),
    ...closingProposals(now, zone),
  ];
  if (remakes && hasBegun(plan)) return <Begun />;
  return (
    <section className="quick__part" aria-labelledby="quick-closing">
      <h3 id="quick-closing">{TITLE}</h3>
      <p>
        From then on all windows and exterior doors stay closed until you pick up the kit. It is placed{' '}
        {formatDuration(CLOSED_BEFORE.duration)} later, or at the first hour after that at which you are awake.
      </p>
      <ChoiceRow
        label="Close the house"
        quiet
        choices={choices.map(({ words, at }) => ({
          value: at,
          words: `${words}: ${formatForOccupants(instantText(at, zone), plan) ?? ''}`,
        }))}
        chosen={msOf(closing)}
        onChoose={(at) => answer({ closing: at === null ? null : instantText(at, zone) })}
      />
      <InstantField
        label="Or another day and time"
        value={closing}
        zone={zone}
        ahead
        hint="An evening or a weekend is fine."
        onCommit={(value) => {
          answer({ closing: value });
          return '';
        }}
      />
    </section>
  );
}

function Begun() {
  return (
    <section className="quick__part" aria-labelledby="quick-closing">
      <h3 id="quick-closing">{TITLE}</h3>
      <p>The kit is placed. Keep the house closed until you pick it up.</p>
    </section>
  );
}
