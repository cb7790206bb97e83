import { useEffect, useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { MitigationSeen, ReportFacts } from '../../../../geometry/plan/report-facts.ts';
import { readReportFacts } from '../../../../geometry/planfile/schema/report-facts.ts';
import { licenseOf, peopleInLog } from '../../../protocol/required-items/people.ts';
import {
  NO_ADDRESS,
  NO_DRAWING,
  NO_LABORATORY,
  NO_PARTY,
  type UsualFacts,
  usualFacts,
  withLicense,
  withReportFacts,
  withUsualFacts,
} from '../../../protocol/required-items/report-facts.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { readSetting, writeSetting } from '../../../storage/settings.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DayField } from '../../fields/day-field.tsx';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { DeviceFields } from './device-fields.tsx';
import { Group, Texts } from './field-groups.tsx';

const USUAL = 'usual-report-facts';

const MITIGATION: readonly { readonly value: MitigationSeen; readonly words: string }[] = [
  { value: 'none', words: 'None found' },
  { value: 'running', words: 'Seen, and running' },
  { value: 'not-running', words: 'Seen, and not running' },
  { value: 'unknown', words: 'Not known' },
];

/** Fields that only the report needs. Facts that are usually the same are offered for the next plan. */
export function ReportFields({ plan }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const change = (patch: ReportFacts) => {
    void writeSetting(USUAL, usualFacts(withReportFacts(plan, patch)));
    return run((now) => withReportFacts(now, patch));
  };
  return (
    <>
      <UsualOffer plan={plan} />
      <Building plan={plan} change={change} />
      <Drawing plan={plan} change={change} />
      <Client plan={plan} change={change} />
      <Firm plan={plan} change={change} />
      <Laboratory plan={plan} change={change} />
      <DeviceFields plan={plan} onCommit={change} />
    </>
  );
}

interface GroupProps {
  readonly plan: Plan;
  /** Returns why the change was refused, in words; empty if it was made. */
  readonly change: (patch: ReportFacts) => string;
}

function Building({ plan, change }: GroupProps) {
  const { address = NO_ADDRESS, mitigation = null, houseType = '', areas = '', vents = '' } = plan.report ?? {};
  return (
    <Group title="Building" known={address.street}>
      <Texts
        of={address}
        rows={[
          { key: 'street', label: 'Street and number' },
          { key: 'city', label: 'City' },
          { key: 'state', label: 'State' },
          { key: 'zip', label: 'ZIP code', exact: true },
          { key: 'county', label: 'County' },
        ]}
        onCommit={(next) => change({ address: next })}
      />
      <TextField
        label="Type of building"
        value={houseType}
        placeholder="for instance single-family house"
        onCommit={(next) => change({ houseType: next })}
      />
      <ChoiceField
        label="Mitigation system"
        value={mitigation?.seen ?? null}
        choices={MITIGATION}
        onCommit={(seen) => change({ mitigation: { note: '', ...mitigation, seen } })}
      />
      {(mitigation?.seen === 'running' || mitigation?.seen === 'not-running') && (
        <TextField
          label="What was seen of the system"
          value={mitigation.note}
          onCommit={(note) => change({ mitigation: { ...mitigation, note } })}
        />
      )}
      <TextField
        label="Finished and unfinished areas"
        value={areas}
        hint="Which areas are unfinished, or none."
        onCommit={(next) => change({ areas: next })}
      />
      <TextField
        label="Permanent vents"
        value={vents}
        hint="Crawl space and combustion air: their condition, or none."
        onCommit={(next) => change({ vents: next })}
      />
    </Group>
  );
}

function Drawing({ plan, change }: GroupProps) {
  const drawing = plan.report?.drawing ?? NO_DRAWING;
  return (
    <Group title="Drawing of the plan" known={drawing.by}>
      <TextField
        label="Drawn by"
        value={drawing.by}
        onCommit={(by) => change({ drawing: { ...drawing, by: by.trim() } })}
      />
      <DayField
        label="Drawn on"
        value={drawing.at}
        zone={plan.site.timeZone}
        onCommit={(at) => change({ drawing: { ...drawing, at } })}
      />
    </Group>
  );
}

function Client({ plan, change }: GroupProps) {
  const { client = NO_PARTY, releaseTo = [] } = plan.report ?? {};
  return (
    <Group title="Client" known={client.name}>
      <Texts
        of={client}
        rows={[
          { key: 'name', label: 'Name of the client' },
          { key: 'address', label: 'Address of the client' },
          { key: 'telephone', label: 'Telephone of the client', exact: true },
          { key: 'email', label: 'Email of the client', exact: true },
        ]}
        onCommit={(next) => change({ client: next })}
      />
      <TextField
        label="The report may be given to"
        value={releaseTo.join(', ')}
        hint="Names, with commas between them."
        onCommit={(text) =>
          change({
            releaseTo: text
              .split(',')
              .map((name) => name.trim())
              .filter(Boolean),
          })
        }
      />
    </Group>
  );
}

function Firm({ plan, change }: GroupProps) {
  const firm = plan.report?.firm ?? NO_PARTY;
  return (
    <Group title="Firm and licenses" known={firm.name}>
      <Texts
        of={firm}
        rows={[
          { key: 'name', label: 'Name of the firm' },
          { key: 'address', label: 'Address of the firm' },
          { key: 'telephone', label: 'Telephone of the firm', exact: true },
          { key: 'email', label: 'Email of the firm', exact: true },
          { key: 'license', label: 'License of the firm', exact: true },
        ]}
        onCommit={(next) => change({ firm: next })}
      />
      {peopleInLog(plan).map((name) => (
        <TextField
          key={name}
          label={`License or certificate of ${name}`}
          value={licenseOf(plan, name)}
          exact
          onCommit={(license) => change(withLicense(plan, name, license).report ?? {})}
        />
      ))}
    </Group>
  );
}

function Laboratory({ plan, change }: GroupProps) {
  const laboratory = plan.report?.laboratory ?? NO_LABORATORY;
  return (
    <Group title="Laboratory" known={laboratory.name}>
      <Texts
        of={laboratory}
        rows={[
          { key: 'name', label: 'Name of the laboratory' },
          { key: 'address', label: 'Address of the laboratory' },
          { key: 'license', label: 'License of the laboratory', exact: true },
          { key: 'analyst', label: 'Analyzed by' },
        ]}
        onCommit={(next) => change({ laboratory: next })}
      />
      <InstantField
        label="Analyzed"
        value={laboratory.analyzed}
        zone={plan.site.timeZone}
        refuse={notAhead(plan.site.timeZone)}
        onCommit={(analyzed) => change({ laboratory: { ...laboratory, analyzed } })}
      />
      <InstantField
        label="Reported"
        value={laboratory.reported}
        zone={plan.site.timeZone}
        refuse={notAhead(plan.site.timeZone)}
        onCommit={(reported) => change({ laboratory: { ...laboratory, reported } })}
      />
    </Group>
  );
}

/** Offers firm, laboratory and device of the last report, if this one has none of them. */
function UsualOffer({ plan }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const [usual, setUsual] = useState<UsualFacts | null>(null);
  useEffect(() => {
    void readSetting(USUAL).then((found) => setUsual(readReportFacts(found)));
  }, []);
  const { firm, laboratory, device } = plan.report ?? {};
  if (!usual || Object.keys(usual).length === 0 || firm || laboratory || device) return null;
  return (
    <button type="button" className="button" onClick={() => run((now) => withUsualFacts(now, usual))}>
      Firm, laboratory and device as in the last report
    </button>
  );
}
