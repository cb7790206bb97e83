import { useEffect, useMemo, useState } from 'react';
import { type ControlChart, controlCharts } from '../../protocol/quality/control-charts.ts';
import { type QualityBook, qualityBook } from '../../protocol/quality/quality-book.ts';
import { useAppStore } from '../../state/store.ts';
import { type OtherPlans, otherPlans } from '../../storage/other-plans.ts';

export type OtherPlansState =
  | { readonly state: 'reading' }
  | { readonly state: 'failed' }
  | { readonly state: 'read'; readonly kept: OtherPlans };

interface Book {
  readonly kept: OtherPlansState;
  readonly book: QualityBook;
  readonly charts: readonly ControlChart[];
}

const NONE: OtherPlans['plans'] = [];

/** Returns the book over the plans of the library, which are read once, and the current state of the open plan. */
export function useBook(): Book {
  const open = useAppStore((state) => state.plan);
  const [kept, setOthers] = useState<OtherPlansState>({ state: 'reading' });
  useEffect(() => {
    otherPlans().then(
      (found) => setOthers({ state: 'read', kept: found }),
      () => setOthers({ state: 'failed' }),
    );
  }, []);
  const plans = kept.state === 'read' ? kept.kept.plans : NONE;
  const book = useMemo(() => qualityBook([...plans, open]), [plans, open]);
  const charts = useMemo(() => controlCharts(book.pairs), [book]);
  return { kept, book, charts };
}
