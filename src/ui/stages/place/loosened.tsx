import { counted } from '../../../../geometry/messages/index.ts';
import type { Protocol } from '../../../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../../../geometry/rules/profiles.ts';
import { formatRequired } from '../../../../geometry/units/index.ts';
import { usePlan } from '../../hooks/use-level.ts';
import './spots.css';

/** The rules of this plan that are looser than published, shown beside every verdict and good place. Nothing if there are none. */
export function Loosened() {
  const { protocol, display } = usePlan();
  const loosened = loosenedRules(protocol);
  if (loosened.length === 0) return null;
  const parts = loosened.map(({ name, least, override }) => {
    const [own, published] = [least ?? 0, override?.published ?? 0].map((mm) => formatRequired(mm, display.length));
    return `${name.toLowerCase()} ${own} instead of ${published}`;
  });
  return (
    <p className="loosened">
      <strong>Looser than published:</strong> {parts.join('; ')}.
    </p>
  );
}

/** The number of looser rules, for a narrow place. */
export function LoosenedShort() {
  const count = loosenedRules(usePlan().protocol).length;
  return count > 0 && <span className="rail__more">{counted(count, 'rule')} looser than published</span>;
}

function loosenedRules(protocol: Protocol): readonly EffectiveRule[] {
  return effectiveRules(protocol).filter(({ override }) => override?.loosened);
}
