import { levelsInOrder, withPurpose } from '../../../../geometry/edit/index.ts';
import { capital, PURPOSE_PHRASE } from '../../../../geometry/messages/index.ts';
import type { Plan, Purpose, Site } from '../../../../geometry/plan/model.ts';
import { levelName } from '../../../../geometry/plan/nouns.ts';
import { LARGEST_TOLERANCE } from '../../../../geometry/planfile/schema/plan.ts';
import { livingFieldId, PURPOSE_FIELD } from '../../../commands/go-to.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { LengthField } from '../../fields/length-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { LivingField } from '../draw/level/living-field.tsx';
import { LocationFields } from './location-fields.tsx';
import { NorthField } from './north-field.tsx';
import { ProtocolPanel } from './protocol-panel.tsx';
import { ZoneField } from './zone-field.tsx';

const PURPOSES = (Object.entries(PURPOSE_PHRASE) as [Purpose, string][]).map(([value, words]) => ({
  value,
  words: capital(words),
}));

/** The client, the purpose of the test, the site with its north, and the rules that apply. */
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

/** Location of the site, north of the page, tolerance of the tape, and time zone of the site. */
function PlaceFields({ plan: { site, tapeTolerance } }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const changeSite = (patch: Partial<Site>) => run((plan) => ({ ...plan, site: { ...plan.site, ...patch } }));
  return (
    <>
      <NorthField site={site} changeSite={changeSite} />
      <LocationFields site={site} changeSite={changeSite} />
      <LengthField
        label="The tape may be off by"
        value={tapeTolerance}
        bare="small"
        most={LARGEST_TOLERANCE}
        onCommit={(mm) => run((plan) => ({ ...plan, tapeTolerance: mm }))}
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
