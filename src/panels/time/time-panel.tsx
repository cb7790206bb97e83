import type { Kit, Plan, Visit } from '../../../geometry/plan/model.ts';
import { timingReport } from '../../job/timing/report.ts';
import { useAppStore } from '../../state/store.ts';
import { FieldGroup } from '../fields/field-group.tsx';
import { InstantField } from '../fields/instant-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { CalendarButton } from './calendar-button.tsx';
import { DecayCurve } from './decay-curve.tsx';
import { NextStarts } from './next-starts.tsx';
import { Timeline } from './timeline.tsx';
import { TimingChecks } from './timing-checks.tsx';
import { WorkingHours } from './working-hours.tsx';
import './time-panel.css';

/** What a kit prints of its times. An hour to a year; a slip of the unit is likelier beyond. */
const KIT_LIMITS = [
  { key: 'minimumHours', label: 'At least', unit: ' h', least: 1, most: 8760 },
  { key: 'maximumHours', label: 'At most', unit: ' h', least: 1, most: 8760 },
  { key: 'labDays', label: 'At the laboratory within', unit: ' days', least: 0, most: 365 },
] as const;

/** When the house is closed, the detectors set out and fetched, and how long that is against every limit. */
export function TimePanel() {
  const plan = useAppStore((state) => state.plan);
  const run = useAppStore((state) => state.run);
  const { kit, visit, site } = plan;
  const change = (patch: Partial<Plan>) => run((now) => ({ ...now, ...patch }));
  const changeVisit = (patch: Partial<Visit>) => change({ visit: { ...visit, ...patch } });
  const changeKit = (patch: Partial<Kit>) => change({ kit: { ...kit, ...patch } });
  const instant = (key: 'closedSince' | 'mitigationOnSince' | 'start' | 'end' | 'closedUntil' | 'received') => ({
    value: visit[key] ?? null,
    zone: site.timeZone,
    onCommit: (value: string | null) => changeVisit({ [key]: value }),
  });
  return (
    <>
      <TimingChecks report={timingReport(plan)} />
      <div className="fields">
        <InstantField
          label="House closed since"
          hint="All windows and outside doors, on all levels."
          {...instant('closedSince')}
        />
        <InstantField
          label="Mitigation system on since"
          hint="Leave empty where there is none."
          {...instant('mitigationOnSince')}
        />
        <InstantField label="Set out" hint="Start of the test, to the minute." {...instant('start')} />
        <InstantField label="Fetched" hint="Pick-up, to the minute." {...instant('end')} />
        <InstantField label="House opened again" hint="Only if it was opened." {...instant('closedUntil')} />
        <InstantField label="At the laboratory" {...instant('received')} />
      </div>
      <Timeline plan={plan} />
      <NextStarts plan={plan} onTake={(start) => changeVisit({ start })} />
      <details className="group">
        <summary>
          The kit: <span className="soft">{`${kit.minimumHours} to ${kit.maximumHours} h`}</span>
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
          <FieldGroup name="As its instructions say">
            {KIT_LIMITS.map(({ key, label, unit, least, most }) => (
              <NumberField
                key={key}
                label={label}
                value={kit[key]}
                unit={unit}
                least={least}
                most={most}
                onCommit={(value) => changeKit({ [key]: value ?? kit[key] })}
              />
            ))}
          </FieldGroup>
        </div>
        <DecayCurve labDays={kit.labDays} />
      </details>
      <WorkingHours plan={plan} onChange={(practice) => change({ practice })} />
      <CalendarButton plan={plan} />
    </>
  );
}
