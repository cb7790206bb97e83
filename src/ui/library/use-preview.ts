import { type RefObject, useEffect, useState } from 'react';
import { planPreview, samplePicture } from '../../storage/library/preview.ts';
import type { PlanPreview, PlanSummary } from '../../storage/library/records.ts';
import type { Sample } from '../../storage/samples.ts';

/** A preview is made when its card is so far outside the page or nearer, px. */
const AHEAD = '200px';

/** One preview at a time, with a pause for input between two. */
let drawing: Promise<unknown> = Promise.resolve();

/** Returns the preview of a plan once its card comes into view; undefined until then, null where the plan cannot be read. */
export const usePlanPreview = (
  summary: PlanSummary,
  element: RefObject<Element | null>,
): PlanPreview | null | undefined => useInView(planPreview, summary, element);

/** Returns the picture of a sample once its row comes into view; undefined until then, null where it cannot be loaded. */
export const useSamplePicture = (sample: Sample, element: RefObject<Element | null>): string | null | undefined =>
  useInView(samplePicture, sample, element);

/** Returns what is made of a subject once an element comes into view; undefined until then, null where it cannot be made. */
function useInView<Subject, Made>(
  make: (subject: Subject) => Promise<Made | null>,
  subject: Subject,
  element: RefObject<Element | null>,
): Made | null | undefined {
  const [look, setLook] = useState<Made | null>();
  useEffect(() => {
    const { current } = element;
    let wanted = false;
    const observer = new IntersectionObserver(
      ([entry]) => {
        wanted = entry?.isIntersecting ?? false;
        if (!wanted) return;
        drawing = drawing.then(pause).then(async () => {
          if (!wanted) return;
          const made = await make(subject).catch(() => null);
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
  }, [make, subject, element]);
  return look;
}

function pause(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}
