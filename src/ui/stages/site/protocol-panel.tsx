import { useState } from 'react';
import { overrideRefusal, overrideWord } from '../../../../geometry/messages/index.ts';
import type { Mm, Override } from '../../../../geometry/plan/model.ts';
import { LARGEST_IN_HOUSE } from '../../../../geometry/planfile/schema/leaves.ts';
import {
  effectiveRules,
  isOverridable,
  PROFILES,
  profileById,
  publishedDistance,
  sourceLine,
} from '../../../../geometry/rules/profiles.ts';
import { formatRequired, type LengthUnit } from '../../../../geometry/units/index.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { LengthField } from '../../fields/length-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import './protocol-panel.css';

/** The published list of distances that applies, and the changes that this plan makes to it. A loosened distance is always shown. */
export function ProtocolPanel() {
  const { protocol, display } = useAppStore((state) => state.plan);
  const run = useAppStore((state) => state.run);
  const setOverrides = (overrides: readonly Override[]) =>
    run((plan) => ({ ...plan, protocol: { ...plan.protocol, overrides } }));
  const changed = effectiveRules(protocol).filter(({ override }) => override !== null);
  return (
    <section className="protocol" aria-labelledby="protocol-heading">
      <h3 id="protocol-heading">Protocol</h3>
      {PROFILES.length > 1 ? (
        <ChoiceField
          label="Published protocol"
          value={protocol.profile}
          choices={PROFILES.map(({ id, name }) => ({ value: id, words: name }))}
          onCommit={(profile) => run((plan) => ({ ...plan, protocol: { ...plan.protocol, profile } }))}
        />
      ) : (
        <p>{profileById(protocol.profile)?.name ?? protocol.profile}</p>
      )}
      {changed.length > 0 && (
        <ul className="overrides">
          {changed.map((rule) => (
            <li key={rule.id} className="override" data-loosened={rule.override?.loosened || undefined}>
              <strong>{rule.name}</strong>
              <span className="override__word">{rule.override && overrideWord(rule.least, rule.override)}</span>
              <span>
                {formatRequired(rule.least ?? 0, display.length)}{' '}
                <span className="soft">
                  published {publishedWords(rule.override?.published ?? null, display.length)}
                </span>
              </span>
              {rule.override?.note && <span className="soft">{rule.override.note}</span>}
              <button
                type="button"
                className="text-button"
                onClick={() => setOverrides(protocol.overrides.filter((each) => each.rule !== rule.id))}
              >
                {rule.override?.published === null ? 'Remove this distance' : 'Back to the published distance'}
              </button>
            </li>
          ))}
        </ul>
      )}
      <AddOverride
        onAdd={(override) =>
          setOverrides([...protocol.overrides.filter(({ rule }) => rule !== override.rule), override])
        }
      />
    </section>
  );
}

function AddOverride({ onAdd }: { readonly onAdd: (override: Override) => void }) {
  const { protocol, display } = useAppStore((state) => state.plan);
  const rules = (profileById(protocol.profile)?.rules ?? []).filter(isOverridable);
  const [ruleId, setRuleId] = useState<string>(rules[0]?.id ?? '');
  const [distance, setDistance] = useState<Mm | null>(null);
  const [note, setNote] = useState('');
  const [trouble, setTrouble] = useState('');
  const rule = rules.find(({ id }) => id === ruleId);
  const published = publishedDistance(protocol.profile, ruleId);
  const add = () => {
    const wanted = distance ?? published ?? 0;
    const refusal = overrideRefusal(wanted, published, note);
    setTrouble(refusal);
    if (refusal) return;
    onAdd({ rule: ruleId, distance: wanted, note: note.trim() });
    setDistance(null);
    setNote('');
  };
  return (
    <details className="add-override">
      <summary>Change a distance for this plan</summary>
      <div className="fields">
        <div className="wide">
          <ChoiceField
            label="Rule"
            value={ruleId}
            choices={rules.map(({ id, name }) => ({ value: id, words: name }))}
            {...(rule ? { hint: `Published: ${publishedWords(published, display.length)}. ${sourceLine(rule)}` } : {})}
            onCommit={(id) => {
              setRuleId(id);
              setDistance(null);
            }}
          />
        </div>
        <LengthField
          label="Distance"
          value={distance ?? published ?? 0}
          says={formatRequired}
          most={LARGEST_IN_HOUSE}
          onCommit={(mm) => {
            setDistance(mm);
            return undefined;
          }}
        />
        <div className="wide">
          <TextField label="Why" value={note} placeholder="county form, kit instructions…" onCommit={setNote} />
        </div>
      </div>
      {trouble && (
        <p className="field__trouble" role="alert">
          {trouble}
        </p>
      )}
      <button type="button" className="button" onClick={add}>
        Use this distance
      </button>
    </details>
  );
}

const publishedWords = (published: Mm | null, unit: LengthUnit): string =>
  published === null ? 'no figure' : formatRequired(published, unit);
