import { ruleOf } from '../../../geometry/rules/profiles.ts';
import { LEAFLET_RULES, type Leaflet, NO_ANSWERS } from '../../quick-card/answers.ts';
import { hoursTrouble } from '../../quick-card/schedule.ts';
import { useAppStore } from '../../state/store.ts';
import { OpenLength, OpenNumber } from './answer-fields.tsx';
import { ChoiceRow } from './choice-row.tsx';
import { answer, basePlan, useQuickCard } from './quick-card-store.ts';

/** Usual figures of leaflets; others are typed. */
const HOURS = [
  { least: 48, most: 96, words: '48 to 96 hours' },
  { least: 48, most: 144, words: '2 to 6 days' },
  { least: 72, most: 168, words: '3 to 7 days' },
] as const;
const DAYS = [2, 3, 4, 5, 7, 10] as const;

/** Asks for the figures in the leaflet of the kit. */
export function LeafletPart() {
  const { leaflet, kits } = useQuickCard(({ answers }) => answers);
  const change = (part: Partial<Leaflet>) => answer({ leaflet: { ...leaflet, ...part } });
  const hours = HOURS.findIndex(({ least, most }) => least === leaflet.minimumHours && most === leaflet.maximumHours);
  const trouble = hoursTrouble(basePlan(), leaflet);
  return (
    <section className="quick__part" aria-labelledby="quick-leaflet">
      <h3 id="quick-leaflet">1. The leaflet of your kit</h3>
      <p>Copy them from your leaflet. Leave empty what it does not say.</p>
      <ChoiceRow
        label="How long it is exposed"
        choices={HOURS.map(({ words }, value) => ({ value, words }))}
        chosen={hours < 0 ? null : hours}
        onChoose={(value) => {
          const row = value === null ? null : HOURS[value];
          change({ minimumHours: row?.least ?? null, maximumHours: row?.most ?? null });
        }}
      />
      <div className="quick__fields" data-refused={trouble ? '' : undefined}>
        <OpenNumber
          label="Hours at least"
          value={leaflet.minimumHours}
          least={1}
          most={10_000}
          onCommit={(minimumHours) => change({ minimumHours })}
        />
        <OpenNumber
          label="Hours at most"
          value={leaflet.maximumHours}
          least={1}
          most={10_000}
          onCommit={(maximumHours) => change({ maximumHours })}
        />
      </div>
      {trouble && (
        <p className="field__trouble" role="alert">
          {trouble.why} {trouble.help}
        </p>
      )}
      <ChoiceRow
        label="Days until the laboratory must have it"
        choices={DAYS.map((value) => ({ value, words: String(value) }))}
        chosen={leaflet.labDays}
        onChoose={(labDays) => change({ labDays })}
      />
      <MoreOfLeaflet leaflet={leaflet} change={change} />
      <ChoiceRow
        label="How many kits do you have?"
        choices={[
          { value: 1, words: 'One kit' },
          { value: 2, words: 'Two, side by side' },
        ]}
        chosen={kits}
        onChoose={(value) => answer({ kits: value === 2 ? 2 : 1 })}
      />
    </section>
  );
}

interface MoreProps {
  readonly leaflet: Leaflet;
  readonly change: (part: Partial<Leaflet>) => void;
}

/** Asks for heights and distances, which many leaflets do not give. */
function MoreOfLeaflet({ leaflet, change }: MoreProps) {
  const unit = useQuickCard(({ answers }) => answers.unit);
  const protocol = useAppStore(({ plan }) => plan.protocol);
  const isUsed = leaflet !== NO_ANSWERS.leaflet && (leaflet.lowest !== null || leaflet.highest !== null);
  return (
    <details className="quick__more" open={isUsed || undefined}>
      <summary>Heights, distances and other days, if the leaflet gives some</summary>
      <div className="quick__fields">
        <OpenNumber
          label="Days to the laboratory"
          value={leaflet.labDays}
          least={0}
          most={365}
          onCommit={(labDays) => change({ labDays })}
        />
        <OpenLength
          label="Lowest above the floor"
          unit={unit}
          value={leaflet.lowest}
          onCommit={(lowest) => change({ lowest })}
        />
        <OpenLength
          label="Highest above the floor"
          unit={unit}
          value={leaflet.highest}
          onCommit={(highest) => change({ highest })}
        />
        {LEAFLET_RULES.map((rule) => (
          <OpenLength
            key={rule}
            label={`Away from: ${ruleOf(protocol, rule).name.toLowerCase()}`}
            unit={unit}
            value={leaflet.distances[rule] ?? null}
            onCommit={(mm) => {
              const { [rule]: _, ...others } = leaflet.distances;
              change({ distances: mm === null ? others : { ...others, [rule]: mm } });
            }}
          />
        ))}
      </div>
      <p className="small soft">A distance counts where it asks for more than the usual one, never where for less.</p>
    </details>
  );
}
