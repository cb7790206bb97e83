import type { Plan } from '../../../../geometry/plan/model.ts';
import type { ReportFacts } from '../../../../geometry/plan/report-facts.ts';
import { isSentToLaboratory } from '../../../protocol/custody/log-entries.ts';
import { NO_DEVICE } from '../../../protocol/required-items/report-facts.ts';
import { instantAt, instantText } from '../../../protocol/timing/clock.ts';
import { useAppStore } from '../../../state/store.ts';
import { DayField } from '../../fields/day-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { Group, Texts } from './field-groups.tsx';

interface Props {
  readonly plan: Plan;
  readonly onCommit: (patch: ReportFacts) => string | undefined;
}

/** Fields for the report's statements on the device. */
export function DeviceFields({ plan, onCommit }: Props) {
  const run = useAppStore((state) => state.run);
  const device = plan.report?.device ?? NO_DEVICE;
  const zone = plan.site.timeZone;
  const day = (label: string, key: 'calibrated' | 'expires') => (
    <DayField
      label={label}
      value={noonOf(device[key], zone)}
      zone={zone}
      onCommit={(at) => onCommit({ device: { ...device, [key]: at?.slice(0, 10) ?? '' } })}
    />
  );
  return (
    <Group title="Device" known={device.model}>
      <Texts
        of={device}
        rows={[
          { key: 'description', label: 'What it is' },
          { key: 'maker', label: 'Maker' },
          { key: 'model', label: 'Model', exact: true },
        ]}
        onCommit={(next) => onCommit({ device: next })}
      />
      <TextField
        label="Lot"
        value={plan.kit.lot ?? ''}
        exact
        onCommit={(lot) => run((now) => ({ ...now, kit: { ...now.kit, lot: lot.trim() } }))}
      />
      {day('Use before', 'expires')}
      {!isSentToLaboratory(plan) && (
        <>
          {day('Calibrated on', 'calibrated')}
          <TextField
            label="Hourly readings"
            value={device.hourly ?? ''}
            hint="With the report, or how the client gets them; which hours at the start are left out."
            onCommit={(hourly) => onCommit({ device: { ...device, hourly: hourly.trim() } })}
          />
        </>
      )}
    </Group>
  );
}

/** Returns noon of a day as an instant, which the field needs; null for an empty text. */
function noonOf(day: string, zone: string): string | null {
  if (day === '') return null;
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  return instantText(instantAt({ year, month, day: date, hour: 12, minute: 0 }, zone), zone);
}
