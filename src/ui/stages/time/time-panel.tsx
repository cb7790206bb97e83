import { useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Kit, Visit } from '../../../../geometry/plan/test-record.ts';
import { withVisitStart } from '../../../protocol/custody/placed.ts';
import { asKnownAt } from '../../../protocol/timing/ahead.ts';
import { msOf } from '../../../protocol/timing/clock.ts';
import { hoursAreKnown, labDaysAreKnown } from '../../../protocol/timing/exposure-limits.ts';
import { type KitFigure, withAnswers, withKitFigure } from '../../../protocol/timing/kit-answers.ts';
import { pickedUpRefusal, pickUpNotAhead, placedRefusal } from '../../../protocol/timing/refused-times.ts';
import { timingReport } from '../../../protocol/timing/timing-report.ts';
import { useAppStore } from '../../../state/store.ts';
import { type Choice, ChoiceField } from '../../fields/choice-field.tsx';
import { FieldGroup } from '../../fields/field-group.tsx';
import { InstantField } from '../../fields/instant-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { useMinute } from '../../hooks/use-minute.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { Parts } from '../parts.tsx';
import { CalendarButton } from './calendar-button.tsx';
import { ClosedSinceField } from './closed-since-field.tsx';
import { DecayCurve } from './decay-curve.tsx';
import { ForecastFields } from './forecast-fields.tsx';
import { daysAsHours } from './kit-hours.ts';
import { NextStarts } from './next-starts.tsx';
import { TimelineView } from './timeline.tsx';
import { TimingChecks } from './timing-checks.tsx';
import { WorkingHours } from './working-hours.tsx';
import './time-panel.css';

/** Times in the instructions of a kit. From an hour to a year: a number outside is more likely in a wrong unit. */
const KIT_LIMITS = [
  { key: 'minimumHours', label: 'At least', unit: ' h', least: 1, most: 8760 },
  { key: 'maximumHours', label: 'At most', unit: ' h', least: 1, most: 8760 },
  { key: 'labDays', label: 'Laboratory must have it within', unit: ' days', least: 0, most: 365 },
] as const;

const DEVICES = [
  { value: 'passive', words: 'Passive detector' },
  { value: 'monitor', words: 'Continuous monitor' },
] as const satisfies readonly Choice<NonNullable<Visit['device']>>[];

/** The times of closing the house, placement and pick-up, and their checks against every limit. */
export function TimePanel() {
  const plan = useAppStore((state) => state.plan);
  const run = useAppStore((state) => state.run);
  const { visit, site } = plan;
  const known = asKnownAt(plan, useMinute());
  const change = (patch: Partial<Plan>) => run((now) => ({ ...now, ...patch }));
  const changeVisit = (patch: Partial<Visit>) => change({ visit: { ...visit, ...patch } });
  const takeStart = (start: string) => {
    const refusal = placedRefusal(visit, site.timeZone)(msOf(start) ?? 0, Date.now());
    if (refusal) useAppStore.getState().say(refusal);
    else change({ visit: withVisitStart(visit, start, true) });
  };
  return (
    <Parts
      fields={
        <>
          <p className="small soft">Local time at the property: {site.timeZone.replaceAll('_', ' ')}.</p>
          <InstantFields
            plan={plan}
            onChange={changeVisit}
            onStart={(start) => change({ visit: withVisitStart(visit, start, (msOf(start) ?? 0) > Date.now()) })}
          />
          <ForecastFields plan={plan} onChange={(changed) => change({ visit: changed })} />
          <KitFields plan={plan} onChange={change} onChangeVisit={changeVisit} />
          <WorkingHours plan={plan} onChange={(practice) => change({ practice })} />
        </>
      }
      outcome={
        <>
          <TimingChecks report={timingReport(known)} />
          <NextStarts plan={plan} onTake={takeStart} />
          <TimelineView plan={known} />
          <DecayCurve plan={known} />
          <CalendarButton plan={plan} />
          <Cautions />
        </>
      }
    />
  );
}

interface VisitProps {
  readonly plan: Plan;
  /** Returns why the change was refused, in words; empty if it was made. */
  readonly onChange: (patch: Partial<Visit>) => string;
}

interface InstantProps extends VisitProps {
  /** Stores the start. Returns why it was refused, in words; empty if it was stored. */
  readonly onStart: (start: string | null) => string;
}

/** Fields for the instants of the visit, by the clock of the site. */
function InstantFields({ plan: { visit, site }, onChange, onStart }: InstantProps) {
  const zone = site.timeZone;
  const instant = (
    key: 'mitigationOnSince' | 'start' | 'end' | 'plannedEnd' | 'closedUntil' | 'posted' | 'received',
  ) => ({
    value: visit[key] ?? null,
    zone,
    onCommit: (value: string | null) => onChange({ [key]: value }),
  });
  const happened = pickUpNotAhead(zone);
  return (
    <div className="fields">
      <ClosedSinceField visit={visit} zone={zone} onCommit={(closedSince) => onChange({ closedSince })} />
      <InstantField
        label="Mitigation system on since"
        hint="Leave empty where there is none."
        {...instant('mitigationOnSince')}
      />
      <InstantField
        label="Placed"
        hint="Start of the test, to the minute."
        {...instant('start')}
        onCommit={onStart}
        planned={visit.startPlanned ? 'Planned. Record the placement under Visit.' : ''}
        refuse={placedRefusal(visit, zone)}
      />
      {/* Stays after the pick-up is recorded: otherwise the fields below would move up under the next press. */}
      <InstantField
        label="Pick-up planned"
        hint="For the calendar and the notices. It does not record a pick-up."
        ahead
        readOnly={visit.end !== null}
        {...instant('plannedEnd')}
      />
      <InstantField
        label="Picked up"
        hint="When it has happened, to the minute."
        {...instant('end')}
        refuse={pickedUpRefusal(visit, zone)}
      />
      <InstantField
        label="House opened again"
        hint="Only if it was opened."
        {...instant('closedUntil')}
        refuse={happened}
      />
      {visit.device !== 'monitor' && (
        <>
          <InstantField label="Mailed" hint="On the day of the pick-up." {...instant('posted')} refuse={happened} />
          <InstantField label="At the laboratory" hint="As it confirms." {...instant('received')} refuse={happened} />
        </>
      )}
    </div>
  );
}

interface KitProps {
  readonly plan: Plan;
  readonly onChange: (patch: Partial<Plan>) => string;
  readonly onChangeVisit: VisitProps['onChange'];
}

/** Returns why a limit contradicts the other one, which is in the field beside it; empty if it does not. */
function kitRefusal({ minimumHours, maximumHours }: Kit, key: keyof Kit, value: number | null): string {
  if (value === null) return '';
  if (key === 'minimumHours' && value > maximumHours)
    return `That is more than "At most", ${maximumHours} h. Correct "At most" first.`;
  if (key === 'maximumHours' && value < minimumHours)
    return `That is less than "At least", ${minimumHours} h. Correct "At least" first.`;
  return '';
}

/** The kind of kit and the limits of its instructions. */
function KitFields({ plan: { kit, visit }, onChange, onChangeVisit }: KitProps) {
  const [hours, days] = [hoursAreKnown({ kit }), labDaysAreKnown({ kit })];
  const isAssumed = !hours || !days;
  const [entered, setEntered] = useState<ReadonlySet<KitFigure>>(new Set());
  // Only the initial state: an answer must not fold it, which would move the fields below.
  const [startsOpen] = useState(isAssumed);
  const changeKit = (patch: Partial<Kit>) => onChange({ kit: { ...kit, ...patch } });
  const enter = (key: KitFigure, value: number | null) => {
    const refusal =
      kitRefusal(kit, key, value) || onChange({ kit: withKitFigure(kit, entered, key, value ?? kit[key]) });
    if (!refusal) setEntered(new Set([...entered, key]));
    return refusal;
  };
  return (
    <details className="group" open={startsOpen || undefined}>
      <summary>
        The kit:{' '}
        <span className="soft">{`${kit.minimumHours} to ${kit.maximumHours} h${hours ? '' : ', assumed'}`}</span>
      </summary>
      <div className="fields">
        <div className="wide">
          <TextField
            label="Kind"
            value={kit.kind}
            hint="As its instructions name it."
            onCommit={(kind) => changeKit({ kind })}
          />
        </div>
        <div className="wide">
          <ChoiceField
            label="What it is"
            value={visit.device ?? 'passive'}
            choices={DEVICES}
            onCommit={(device) => onChangeVisit({ device })}
          />
        </div>
        <FieldGroup name="As its instructions say">
          {KIT_LIMITS.map(({ key, label, unit, least, most }) => (
            <NumberField
              key={key}
              label={label}
              value={kit[key]}
              unit={unit}
              least={least}
              most={most}
              {...(unit === ' h' ? { inDigits: daysAsHours } : {})}
              onCommit={(value) => enter(key, value)}
            />
          ))}
        </FieldGroup>
        <label className="tick wide">
          <input
            type="checkbox"
            checked={!isAssumed}
            onChange={({ currentTarget: { checked } }) => onChange({ kit: withAnswers(kit, checked, checked) })}
          />
          These hours and days are those of its instructions
        </label>
      </div>
    </details>
  );
}
