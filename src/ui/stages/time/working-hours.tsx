import { useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Practice, Weekday } from '../../../../geometry/plan/test-record.ts';
import { USUAL_PRACTICE } from '../../../protocol/timing/propose-starts.ts';
import { TextField } from '../../fields/text-field.tsx';

/** Start and end, as "08:00". */
interface Hours {
  readonly from: string;
  readonly to: string;
}
const USUAL_HOURS: Hours = { from: '08:00', to: '18:00' };

const NAMES: readonly (readonly [Weekday, string])[] = [
  ['mon', 'Monday'],
  ['tue', 'Tuesday'],
  ['wed', 'Wednesday'],
  ['thu', 'Thursday'],
  ['fri', 'Friday'],
  ['sat', 'Saturday'],
  ['sun', 'Sunday'],
];

/** Fields for the working hours: starts and pick-ups are only offered within them. */
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
  const setDay = (day: Weekday, change: Hours | null) => {
    const others = practice.days.filter((each) => each.day !== day);
    set({ days: change ? [...others, { day, ...change }] : others });
  };
  return (
    <details className="group">
      <summary>
        Working hours <span className="soft">{plan.practice ? 'yours' : 'the usual'}</span>
      </summary>
      <ul className="hours">
        {NAMES.map(([day, name]) => (
          <DayHours
            key={day}
            name={name}
            hours={practice.days.find((each) => each.day === day) ?? null}
            onChange={(hours) => setDay(day, hours)}
          />
        ))}
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

/** Fields for the hours of one day of the week; `hours` is null for a day without work. */
function DayHours({
  name,
  hours,
  onChange,
}: {
  readonly name: string;
  readonly hours: Hours | null;
  readonly onChange: (hours: Hours | null) => void;
}) {
  return (
    <li>
      <label>
        <input
          type="checkbox"
          checked={hours !== null}
          onChange={(event) => onChange(event.currentTarget.checked ? USUAL_HOURS : null)}
        />{' '}
        {name}
      </label>
      {hours && (
        <span className="hours__times">
          <TimeField label={`${name}, from`} value={hours.from} onChange={(from) => onChange({ from, to: hours.to })} />
          <TimeField label={`${name}, until`} value={hours.to} onChange={(to) => onChange({ from: hours.from, to })} />
        </span>
      )}
    </li>
  );
}

function TimeField({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (time: string) => void;
}) {
  return (
    <input
      type="time"
      className="field__input"
      aria-label={label}
      value={value}
      onChange={({ currentTarget }) => currentTarget.value && onChange(currentTarget.value)}
    />
  );
}
