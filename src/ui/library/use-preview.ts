import { type RefObject, useEffect, useState } from 'react';
import { planPreview } from '../../storage/library/preview.ts';
import type { PlanPreview, PlanSummary } from '../../storage/library/records.ts';

/** How far outside the page a summary may be when its picture is made, px. */
const AHEAD = '200px';

/** One picture at a time, between two moves of the hand. */
let drawing: Promise<unknown> = Promise.resolve();

/** Picture and verdicts of a plan, once its summary comes into view; undefined until then, null where the plan cannot be read. */
export function usePlanPreview(
  summary: PlanSummary,
  element: RefObject<Element | null>,
): PlanPreview | null | undefined {
  const [look, setLook] = useState<PlanPreview | null>();
  useEffect(() => {
    const { current } = element;
    let wanted = false;
    const observer = new IntersectionObserver(
      ([entry]) => {
        wanted = entry?.isIntersecting ?? false;
        if (!wanted) return;
        drawing = drawing.then(pause).then(async () => {
          if (!wanted) return;
          const made = await planPreview(summary).catch(() => null);
          observer.disconnect();
          if (wanted) setLook(made);
        });
      },
      { rootMargin: AHEAD },
    );
    if (current) observer.observe(current);
    return () => {
      wanted = false;
      observer.disconnect();
    };
  }, [summary, element]);
  return look;
}

function pause(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}
