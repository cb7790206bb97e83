import { type RefObject, useEffect, useState } from 'react';
import { planPreview, samplePicture } from '../../storage/library/preview.ts';
import type { PlanPreview, PlanSummary } from '../../storage/library/records.ts';
import type { Sample } from '../../storage/samples.ts';
import { onceInView } from './once-in-view.ts';

/** Returns the preview of a plan once its card is in view; undefined until then, null if the plan cannot be read. */
export const usePlanPreview = (
  summary: PlanSummary,
  element: RefObject<Element | null>,
): PlanPreview | null | undefined => useInView(planPreview, summary, element);

/** Returns the picture of a sample once its row is in view; undefined until then, null if it cannot be loaded. */
export const useSamplePicture = (sample: Sample, element: RefObject<Element | null>): string | null | undefined =>
  useInView(samplePicture, sample, element);

/** Returns the result of `make` for a subject once an element is in view; undefined until then, null if `make` fails. */
function useInView<Subject, Made>(
  make: (subject: Subject) => Promise<Made | null>,
  subject: Subject,
  element: RefObject<Element | null>,
): Made | null | undefined {
  const [look, setLook] = useState<Made | null>();
  useEffect(
    () => (element.current ? onceInView(element.current, () => make(subject), setLook) : undefined),
    [make, subject, element],
  );
  return look;
}
