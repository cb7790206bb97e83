import { useState } from 'react';
import type { Detector } from '../../../geometry/plan/model.ts';
import { later } from '../hooks/later.tsx';

const PublishedLists = later(() => import('../stages/place/published-lists.tsx').then((part) => part.PublishedLists));

/** The verdicts of all published lists on the same spot, each as published. Computed only while it is open. */
export function OtherLists({ detector }: { readonly detector: Detector }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="other-lists" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Under every published protocol</summary>
      {open && <PublishedLists detector={detector} />}
    </details>
  );
}
