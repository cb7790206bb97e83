import type { Opening } from '../../../geometry/plan/model.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { useThrottled } from '../hooks/use-throttled.ts';

type Shade = NonNullable<Opening['shade']>;
type PartialShade = Exclude<Shade, string>;

/** Initial overhang and obstruction, mm: they block no sun until they are measured. The overhang starts 10 ft above the head. */
const UNMEASURED_OVERHANG = { depth: 0, above: 3048 };
const UNMEASURED_OBSTRUCTION = 0;

/** What keeps direct sun out of an outside opening, each as a button. Clouds are not considered. */
export function SunFields({ opening }: { readonly opening: Opening }) {
  const updateItem = useAppStore((state) => state.updateItem);
  const isOutside = useThrottled((state) =>
    selectModel(state).openings.some(({ opening: { id }, outside }) => id === opening.id && outside),
  );
  if (!isOutside) return null;
  const { id, kind, shade = null } = opening;
  const isGlazed = opening.glazed ?? kind !== 'door';
  const partial: PartialShade = typeof shade === 'object' && shade ? shade : {};
  const set = (next: Shade | null) => updateItem(id, { shade: next });
  const setPart = (patch: { [Key in keyof PartialShade]: PartialShade[Key] | undefined }) => {
    const { overhang, obstruction } = { ...partial, ...patch };
    const next = { ...(overhang && { overhang }), ...(obstruction !== undefined && { obstruction }) };
    return set(Object.keys(next).length > 0 ? next : null);
  };
  const { overhang, obstruction } = partial;
  return (
    <FieldGroup name="Direct sun">
      <label className="tick wide">
        <input
          type="checkbox"
          checked={isGlazed}
          onChange={(event) => updateItem(id, { glazed: event.currentTarget.checked })}
        />
        It lets light in while it is shut
      </label>
      {isGlazed && (
        <>
          <div className="buttons wide">
            <Press words="Kept covered" on={shade === 'covered'} onPress={(on) => set(on ? 'covered' : null)} />
            <Press words="Window well" on={shade === 'well'} onPress={(on) => set(on ? 'well' : null)} />
            <Press
              words="Overhang"
              on={overhang !== undefined}
              onPress={(on) => setPart({ overhang: on ? UNMEASURED_OVERHANG : undefined })}
            />
            <Press
              words="Something outside"
              on={obstruction !== undefined}
              onPress={(on) => setPart({ obstruction: on ? UNMEASURED_OBSTRUCTION : undefined })}
            />
          </div>
          {overhang && (
            <>
              <LengthField
                label="Stands out"
                value={overhang.depth}
                bare="small"
                onCommit={(depth) => setPart({ overhang: { ...overhang, depth } })}
              />
              <LengthField
                label="Over the head"
                value={overhang.above}
                bare="small"
                onCommit={(above) => setPart({ overhang: { ...overhang, above } })}
              />
              {overhang.depth === 0 && (
                <p className="field__hint wide">Measure both: until then it keeps no sun out.</p>
              )}
              <p className="field__hint wide">
                It counts as going on at both sides. If it ends near the window, sun comes in past its end: then leave
                it out.
              </p>
            </>
          )}
          {obstruction !== undefined && (
            <NumberField
              label="Hides the sun up to"
              value={obstruction}
              unit="°"
              least={0}
              most={90}
              hint="Seen from the window: 0 is level and hides nothing, 45 is half way up."
              onCommit={(degrees) => setPart({ obstruction: degrees ?? UNMEASURED_OBSTRUCTION })}
            />
          )}
          <p className="field__hint wide">
            {shade === 'covered' ? 'The curtain or blind stays closed for the whole test. ' : ''}
            Clouds are not counted on.
          </p>
        </>
      )}
    </FieldGroup>
  );
}

function Press({ words, on, onPress }: { words: string; on: boolean; onPress: (on: boolean) => void }) {
  return (
    <button type="button" className="button" aria-pressed={on} onClick={() => onPress(!on)}>
      {words}
    </button>
  );
}
