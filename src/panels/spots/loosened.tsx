import { formatLength } from '../../../geometry/units.ts';
import { effectiveRules } from '../../engine.ts';
import { usePlan } from '../use-level.ts';
import './spots.css';

/** What this job keeps less than published, wherever a verdict or a good place is told: never quiet. Nothing where it keeps all. */
export function Loosened() {
  const { protocol, display } = usePlan();
  const loosened = effectiveRules(protocol).filter(({ override }) => override?.loosened);
  if (loosened.length === 0) return null;
  const told = loosened.map(({ name, least, override }) => {
    const [own, published] = [least ?? 0, override?.published ?? 0].map((mm) => formatLength(mm, display.length));
    return `${name.toLowerCase()} ${own} instead of ${published}`;
  });
  return (
    <p className="loosened">
      <strong>Looser than published:</strong> {told.join('; ')}.
    </p>
  );
}
