import { useEffect, useRef, useState } from 'react';
import { describeReport, VERDICT_WORD } from '../../geometry/words.ts';
import { selectLevel, selectReports, selectShownPlan } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';

/** Long enough that a drag across a zone is told once, ms. */
const REST_MS = 500;

/** Tells a screen reader when a detector's verdict has changed, once the hand rests. */
export function LiveRegion() {
  const [said, setSaid] = useState('');
  const heard = useRef(new Map<string, string>());
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const tell = () => {
      const state = useAppStore.getState();
      const plan = selectShownPlan(state);
      const level = selectLevel(state);
      const lines: string[] = [];
      const now = new Map<string, string>();
      for (const report of selectReports(state)) {
        now.set(report.id, report.verdict);
        if (heard.current.get(report.id) === report.verdict) continue;
        const label = level.detectors.find(({ id }) => id === report.id)?.label || 'Detector';
        lines.push(`${label}: ${VERDICT_WORD[report.verdict]}. ${describeReport(report, plan, level)}`);
      }
      heard.current = now;
      if (lines.length > 0) setSaid(lines.join(' '));
    };
    const stop = useAppStore.subscribe(() => {
      clearTimeout(timer);
      timer = setTimeout(tell, REST_MS);
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, []);
  return (
    <output className="unseen" aria-live="polite">
      {said}
    </output>
  );
}
