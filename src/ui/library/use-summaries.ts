import { useEffect, useState } from 'react';
import { troubleInWords } from '../../storage/library/database.ts';
import { readSummaries } from '../../storage/library/plans.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { useLibrary } from '../../storage/library-state.ts';

export type Cards =
  | { readonly state: 'reading' }
  | { readonly state: 'read'; readonly summaries: readonly PlanSummary[] }
  | { readonly state: 'failed'; readonly why: string };

/** Returns all summaries, including deleted plans. Reads them again when the library changes, here or in another tab. */
export function usePlanSummaries(): Cards {
  const news = useLibrary(({ changes }) => changes);
  const [summaries, setCards] = useState<Cards>({ state: 'reading' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the count of news says when to read again
  useEffect(() => {
    let gone = false;
    readSummaries().then(
      (read) => !gone && setCards({ state: 'read', summaries: read }),
      (error: unknown) => !gone && setCards({ state: 'failed', why: troubleInWords(error) }),
    );
    return () => {
      gone = true;
    };
  }, [news]);
  return summaries;
}
