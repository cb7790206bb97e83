import { useEffect, useState } from 'react';
import { NO_SUN_COMES_IN } from '../../../geometry/check/sun.ts';
import type { Check, DetectorReport } from '../../../geometry/check/types.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { sunTimes } from '../../../geometry/sun/times.ts';
import { SUN_HOLDS, sunTimesInWords } from '../../advice/sun-words.ts';
import { partMissing } from '../../platform/part-missing.ts';
import { isGestureUnderWay, selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';

/** When the sun comes too near to a detector, valid for the planned days only. Nothing if direct sun was not computed. */
export function SunLine({ detector, report }: { readonly detector: Detector; readonly report: DetectorReport }) {
  const row = report.checks.find(
    ({ rule, measured, reason }) => rule === 'direct-sun' && (measured !== null || reason === NO_SUN_COMES_IN),
  );
  const words = useSunTimes(detector, row?.verdict === 'clear' ? undefined : row);
  // A test with results cannot start later.
  const isOver = useAppStore(({ plan }) => plan.readings.length > 0);
  const later = useLateStart(detector, isOver ? undefined : row);
  if (!row) return null;
  return (
    <p className="sun-line small soft">
      {words && `The sun comes too near from ${words}. `}
      {later || SUN_HOLDS}
    </p>
  );
}

/** Returns in words what a later start would change; empty until it is computed, and during a drag. */
function useLateStart(detector: Detector, row: Check | undefined): string {
  const model = useThrottled(selectModel);
  const plan = useAppStore((state) => state.plan);
  const isAtRest = useAppStore((state) => !isGestureUnderWay(state));
  const [found, setFound] = useState<{ readonly row: Check; readonly late: string } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the row is another one after every change that the verdict depends on
  useEffect(() => {
    if (!row || !isAtRest) return;
    let isWanted = true;
    void import('../../state/late-start.ts')
      .catch(partMissing)
      .then(({ lateStart }) => lateStart(plan, model, detector, () => isWanted))
      .then((late) => {
        if (isWanted && late) setFound({ row, late });
      });
    return () => {
      isWanted = false;
    };
  }, [row, isAtRest]);
  return row && found?.row === row ? found.late : '';
}

/** Returns the times in words; empty until they are computed, and during a drag. */
function useSunTimes({ at, base, tall, radius }: Detector, row: Check | undefined): string {
  const model = useThrottled(selectModel);
  const plan = useAppStore((state) => state.plan);
  const isAtRest = useAppStore((state) => !isGestureUnderWay(state));
  const [found, setFound] = useState<{ readonly row: Check; readonly words: string } | null>(null);
  const times = sunTimes(plan);
  const zone = plan.site.timeZone;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the row is another one after every change that the times depend on
  useEffect(() => {
    const { subject = null, required = null } = row ?? {};
    if (!row || subject === null || required === null || !times || !isAtRest) return;
    let isWanted = true;
    const spot = { at, heights: { base, tall }, reach: required + radius };
    void import('../../state/sun-hours.ts')
      .catch(partMissing)
      .then(({ sunHours }) => sunHours(model, times, subject, spot, () => isWanted))
      .then((spans) => {
        if (isWanted && spans) setFound({ row, words: sunTimesInWords(spans, times, zone) });
      });
    return () => {
      isWanted = false;
    };
  }, [row, isAtRest]);
  return row && found?.row === row ? found.words : '';
}
