import { useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Practice, Weekday } from '../../../../geometry/plan/test-record.ts';
import { USUAL_PRACTICE } from '../../../protocol/timing/propose-starts.ts';
import { TextField } from '../../fields/text-field.tsx';

const NAMES: readonly (readonly [Weekday, string])[] = [
  ['mon', 'Monday'],
  ['tue', 'Tuesday'],
  ['wed', 'Wednesday'],
  ['thu', 'Thursday'],
  ['fri', 'Friday'],
  ['sat', 'Saturday'],
  ['sun', 'Sunday'],
];

/** When you work: starts and pick-ups are only offered then. */
export function WorkingHours({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (practice: Practice) => string;
}) {
  const practice = plan.practice ?? USUAL_PRACTICE;
  const [trouble, setTrouble] = useState('');
  const set = (patch: Partial<Practice>) => setTrouble(onChange({ ...practice, ...patch }));
  const hours = (day: Weekday) => practice.days.find((each) => each.day === day);
  const setDay = (day: Weekday, change: { from: string; to: string } | null) => {
    const others = practice.days.filter((each) => each.day !== day);
    set({ days: change ? [...others, { day, ...change }] : others });
  };
  return (
    <details className="group">
      <summary>
        Hours of work <span className="soft">{plan.practice ? 'yours' : 'the usual'}</span>
      </summary>
      <ul className="hours">
        {NAMES.map(([day, name]) => {
          const now = hours(day);
          return (
            <li key={day}>
              <label>
                <input
                  type="checkbox"
                  checked={now !== undefined}
                  onChange={(event) => setDay(day, event.currentTarget.checked ? { from: '08:00', to: '18:00' } : null)}
                />{' '}
                {name}
              </label>
              {now && (
                <span className="hours__times">
                  <input
                    type="time"
                    className="field__input"
                    aria-label={`${name}, from`}
                    value={now.from}
                    onChange={(event) =>
                      event.currentTarget.value && setDay(day, { from: event.currentTarget.value, to: now.to })
                    }
                  />
                  <input
                    type="time"
                    className="field__input"
                    aria-label={`${name}, until`}
                    value={now.to}
                    onChange={(event) =>
                      event.currentTarget.value && setDay(day, { from: now.from, to: event.currentTarget.value })
                    }
                  />
                </span>
              )}
            </li>
          );
        })}
      </ul>
      <TextField
        label="Days off"
        value={practice.daysOff.join(', ')}
        hint="Like 2026-11-26, 2026-12-25."
        onCommit={(text) => set({ daysOff: text.split(/[,;\s]+/).filter(Boolean) })}
      />
      {trouble && (
        <p className="field__trouble" role="alert">
          {trouble}
        </p>
      )}
    </details>
  );
}
