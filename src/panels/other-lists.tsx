import { useMemo, useState } from 'react';
import type { Detector } from '../../geometry/plan/model.ts';
import { VERDICT_WORD } from '../../geometry/words.ts';
import { compareProfiles } from '../engine.ts';
import { selectModel } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { VerdictMark } from './verdict-mark.tsx';

/** What the other published lists say of the same spot, each as published. Worked out only while it is open. */
export function OtherLists({ detector }: { readonly detector: Detector }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="other-lists" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Under every published list</summary>
      {open && <Lists detector={detector} />}
    </details>
  );
}

function Lists({ detector }: { readonly detector: Detector }) {
  const plan = useAppStore((state) => state.plan);
  const model = useAppStore(selectModel);
  const lists = useMemo(() => compareProfiles(plan, model, detector), [plan, model, detector]);
  return (
    <ul>
      {lists.map(({ profile, report }) => (
        <li key={profile.id} className="other-list" data-verdict={report.verdict}>
          <VerdictMark verdict={report.verdict} size={16} />
          <span>{profile.name}</span>
          <strong>{VERDICT_WORD[report.verdict]}</strong>
        </li>
      ))}
    </ul>
  );
}
