import { capital } from '../../../geometry/plan/nouns.ts';
import { hasNoWhite } from '../../state/no-white.ts';
import { selectLevelBar } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';

/** Where the first detector of the level goes, or why no spot of it is allowed. */
export function WhereToPlace() {
  const bar = useAppStore(selectLevelBar);
  const isFull = useThrottled(hasNoWhite);
  return <p className="verdict-panel__reason">{capital(bar) || (isFull ? NO_WHITE : IN_WHITE)}</p>;
}

const IN_WHITE = 'Place one in the allowed area: what a rule excludes is hatched.';
const NO_WHITE = 'No spot is allowed so far. Try another height under Place, or enter what the rooms are used for.';
