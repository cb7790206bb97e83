import { type RefObject, useEffect, useState } from 'react';
import { planPreview } from '../../storage/library/preview.ts';
import type { PlanPreview, PlanSummary } from '../../storage/library/records.ts';

/** A preview is made when its card is so far outside the page or nearer, px. */
const AHEAD = '200px';

/** One preview at a time, with a pause for input between two. */
let drawing: Promise<unknown> = Promise.resolve();

/** Returns the preview of a plan once its card comes into view; undefined until then, null where the plan cannot be read. */
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
