import { capital } from '../../../geometry/plan/nouns.ts';
import { isNothingAllowed } from '../../state/nothing-allowed.ts';
import { selectLevelBar } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';

/** Where to place the first detector of the level, or why no spot is allowed. */
export function WhereToPlace() {
  const bar = useAppStore(selectLevelBar);
  const nothingAllowed = useThrottled(isNothingAllowed);
  return (
    <p className="verdict-panel__reason">{capital(bar) || (nothingAllowed ? NOTHING_ALLOWED : IN_ALLOWED_AREA)}</p>
  );
}

const IN_ALLOWED_AREA = 'Place one in the allowed area: what a rule excludes is hatched.';
const NOTHING_ALLOWED =
  'No spot is allowed so far. Try another height under Place, or enter what the rooms are used for.';
