import { levelsInOrder, withPurpose } from '../../../../geometry/edit/index.ts';
import { capital, PURPOSE_PHRASE } from '../../../../geometry/messages/index.ts';
import { levelName } from '../../../../geometry/messages/subject.ts';
import type { Plan, Purpose, Site } from '../../../../geometry/plan/model.ts';
import { LATITUDE_FIELD, livingFieldId, NORTH_FIELD, PURPOSE_FIELD } from '../../../commands/go-to.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { LengthField } from '../../fields/length-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { LivingField } from '../draw/level/living-field.tsx';
import { ProtocolPanel } from './protocol-panel.tsx';
import { ZoneField } from './zone-field.tsx';

const PURPOSES = (Object.entries(PURPOSE_PHRASE) as [Purpose, string][]).map(([value, words]) => ({
  value,
  words: capital(words),
}));

/** The client, the purpose of the test, the north of the page, and the rules that apply. */
export function SitePanel() {
  const plan = useAppStore((state) => state.plan);
  const { title, site } = plan;
  const run = useAppStore((state) => state.run);
  const change = (patch: Partial<Plan>) => run((plan) => ({ ...plan, ...patch }));
  const changeSite = (patch: Partial<Site>) => {
    return run((plan) => ({ ...plan, site: { ...plan.site, ...patch } }));
  };
  return (
    <>
      <div className="fields">
        <div className="wide">
          <TextField label="Title of the plan" value={title} onCommit={(text) => change({ title: text })} />
        </div>
        <div className="wide">
          <TextField
            label="Property"
            value={site.label}
            hint="Address, owner, project number: as it should appear on the plan sheet."
            onCommit={(label) => changeSite({ label })}
          />
        </div>
        <div className="wide">
          <ChoiceField
            label="Why it is tested"
            fieldId={PURPOSE_FIELD}
            value={site.purposeAnswered === false ? null : site.purpose}
            choices={PURPOSES}
            hint="It decides which level is tested."
            onCommit={(purpose) => run((plan) => withPurpose(plan, purpose))}
          />
        </div>
        {levelsInOrder(plan).map((level) => (
          <div key={level.id} className="wide">
            <LivingField level={level} label={`People on ${levelName(level)}`} fieldId={livingFieldId(level.id)} />
          </div>
        ))}
        <PlaceFields plan={plan} />
        <UnitFields plan={plan} />
      </div>
      <ProtocolPanel />
    </>
  );
}

/** Where the site is and how the page lies, the precision of the tape, and the clock of the site. */
function PlaceFields({ plan: { site, tapeTolerance } }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const changeSite = (patch: Partial<Site>) => run((plan) => ({ ...plan, site: { ...plan.site, ...patch } }));
  const changeNorth = (north: number | null) =>
    north === null
      ? changeSite({ north: 0, northAnswered: false })
      : changeSite({ north: ((north % 360) + 360) % 360, northAnswered: true });
  return (
    <>
      <NumberField
        id={NORTH_FIELD}
        label="North, from up the page"
        value={site.northAnswered === false ? null : site.north}
        unit="°"
        least={-360}
        most={360}
        mayBeEmpty
        hint="Clockwise from straight up the page. Empty: the plan sheet states that north is not given, and direct sun is not worked out."
        onCommit={(north) => changeNorth(north)}
      />
      <LengthField
        label="The tape may be off by"
        value={tapeTolerance}
        bare="small"
        onCommit={(mm) => run((plan) => ({ ...plan, tapeTolerance: mm }))}
      />
      <NumberField
        id={LATITUDE_FIELD}
        label="Latitude"
        value={site.latitude}
        unit="°"
        least={-90}
        most={90}
        mayBeEmpty
        onCommit={(latitude) => changeSite({ latitude })}
      />
      <NumberField
        label="Longitude"
        value={site.longitude}
        unit="°"
        least={-180}
        most={180}
        mayBeEmpty
        onCommit={(longitude) => changeSite({ longitude })}
      />
      <div className="wide">
        <ZoneField value={site.timeZone} onCommit={(timeZone) => changeSite({ timeZone })} />
      </div>
    </>
  );
}

/** The units of lengths and of radon. */
function UnitFields({ plan: { display } }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const change = (patch: Partial<Plan['display']>) =>
    run((plan) => ({ ...plan, display: { ...plan.display, ...patch } }));
  return (
    <>
      <ChoiceField
        label="Lengths in"
        value={display.length}
        choices={[
          { value: 'feet-inches', words: 'feet and inches' },
          { value: 'metric', words: 'meters' },
        ]}
        onCommit={(length) => change({ length })}
      />
      <ChoiceField
        label="Radon in"
        value={display.radon}
        choices={[
          { value: 'pCi/L', words: 'pCi/L' },
          { value: 'Bq/m3', words: 'Bq/m³' },
        ]}
        onCommit={(radon) => change({ radon })}
      />
    </>
  );
}
