import { footprintReach } from '../../../geometry/dimension/footprint.ts';
import { capital, FIXTURE_NOUN } from '../../../geometry/messages/index.ts';
import { FIXTURE_KINDS, type Fixture, type Stream } from '../../../geometry/plan/model.ts';
import { fullTurn } from '../../../geometry/plane/bearing.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import { LARGEST_IN_HOUSE } from '../../../geometry/planfile/schema/leaves.ts';
import { countsByHeights } from '../../../geometry/rules/profiles.ts';
import { openStage } from '../../commands/panels.ts';
import { machinesNearby } from '../../protocol/conditions/nearby-machines.ts';
import { STAGE_BUTTON } from '../../protocol/validity/validity.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { HeightsAssumed } from './heights-assumed.tsx';
import { PlaceFields } from './place-fields.tsx';
import { HeightFields, ShapeFields } from './size-fields.tsx';

const KINDS = FIXTURE_KINDS.map((value) => ({ value, words: capital(FIXTURE_NOUN[value]) }));
/** Stream in all directions until the user enters its direction, with a reach of 5 ft: common practice, no published source. */
const UNSEEN_STREAM: Stream = { direction: 0, spread: 360, reach: 1524 };

export function FixtureFields({ fixture }: { readonly fixture: Fixture }) {
  const updateItem = useAppStore((state) => state.updateItem);
  const { id, kind, name, shape, bottom, top, stream } = fixture;
  const countsByHeight = useAppStore(({ plan }) => countsByHeights(plan.protocol, kind));
  return (
    <>
      <div className="fields">
        <div className="wide">
          <ChoiceField
            label="What it is"
            value={kind}
            choices={KINDS}
            onCommit={(next) => updateItem(id, { kind: next })}
          />
        </div>
        <div className="wide">
          <TextField label="Name, if it needs one" value={name} onCommit={(text) => updateItem(id, { name: text })} />
        </div>
        <PlaceFields middle={shapeMiddle(shape)} reach={footprintReach(shape)} />
        <ShapeFields id={id} shape={shape} />
        <HeightFields id={id} bottom={bottom} top={top} />
        {countsByHeight && <HeightsAssumed item={fixture} names={['Underside', 'Top']} />}
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={stream !== null}
          onChange={(event) => updateItem(id, { stream: event.currentTarget.checked ? UNSEEN_STREAM : null })}
        />
        It has an airflow
      </label>
      <OffDuringTest id={id} />
      {stream && <StreamFields id={id} stream={stream} />}
    </>
  );
}

/** A machine near a detector must be off during the test: a closed-building condition. */
function OffDuringTest({ id }: { readonly id: string }) {
  const machine = useAppStore(({ plan }) => machinesNearby(plan).find((each) => each.id === id));
  if (!machine) return null;
  return (
    <p className="small">
      Within 20 ft (6.1 m) of a detector: it is off during the test.{' '}
      <button type="button" className="text-button" onClick={() => openStage('house')}>
        {STAGE_BUTTON.house}
      </button>
    </p>
  );
}

function StreamFields({ id, stream }: { readonly id: string; readonly stream: Stream }) {
  const updateItem = useAppStore((state) => state.updateItem);
  const change = (patch: Partial<Stream>) => {
    return updateItem(id, { stream: { ...stream, ...patch } });
  };
  return (
    <div className="fields">
      <NumberField
        label="Airflow direction"
        value={stream.direction}
        unit="°"
        least={-360}
        most={360}
        hint="0 is right on the page, 90 down."
        onCommit={(direction) => change({ direction: fullTurn(direction ?? 0) })}
      />
      <NumberField
        label="Spread"
        value={stream.spread}
        unit="°"
        least={0}
        most={360}
        onCommit={(spread) => change({ spread: spread ?? 0 })}
        {...(stream.spread === 360 ? { hint: '360° is all round: look where it blows, and enter both.' } : {})}
      />
      <LengthField label="Reach" value={stream.reach} most={LARGEST_IN_HOUSE} onCommit={(reach) => change({ reach })} />
    </div>
  );
}
