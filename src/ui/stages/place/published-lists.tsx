import { useMemo } from 'react';
import { compareProfiles, type ProfileReport } from '../../../../geometry/check/compare-profiles.ts';
import { describeReport, headlineText, listed, notRunRules, toneOf } from '../../../../geometry/messages/index.ts';
import { profileDoubts } from '../../../../geometry/messages/sources.ts';
import type { Detector } from '../../../../geometry/plan/model.ts';
import { selectModel } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { useThrottled } from '../../hooks/use-throttled.ts';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';
import './published-lists.css';

/** The verdicts of all published lists on the same spot: what passes, what does not and why, and what is in doubt in a list. */
export function PublishedLists({ detector }: { readonly detector: Detector }) {
  const plan = useAppStore((state) => state.plan);
  const model = useThrottled(selectModel);
  const lists = useMemo(() => compareProfiles(plan, model, detector), [plan, model, detector]);
  const changes = plan.protocol.overrides.length > 0;
  return (
    <>
      <p className="fine soft">Each as published.{changes && ' The distances changed on this plan are left out.'}</p>
      <ul className="lists">
        {lists.map((list) => (
          <ListRow key={list.profile.id} list={list} />
        ))}
      </ul>
    </>
  );
}

function ListRow({ list: { profile, protocol, report } }: { readonly list: ProfileReport }) {
  const plan = useAppStore((state) => state.plan);
  const { level } = useThrottled(selectModel);
  const under = { ...plan, protocol };
  const notRun = notRunRules(report, under, level).map(({ rule }) => rule.toLowerCase());
  const kept = plan.protocol.profile === profile.id;
  return (
    <li className="list" data-verdict={toneOf(report)}>
      <p className="list__head">
        <VerdictMark verdict={toneOf(report)} size={16} />
        <span>{profile.name}</span>
        <strong>{headlineText(report)}</strong>
      </p>
      {kept && <p>The protocol of this plan.</p>}
      {profile.term === 'long' && (
        <p>
          <strong>For long-term tests.</strong> It says nothing about a test of days.
        </p>
      )}
      <p>{describeReport(report, under, level)}</p>
      {notRun.length > 0 && <p className="soft">Not run: {listed([...new Set(notRun)])}.</p>}
      {profileDoubts(profile).map((doubt) => (
        <p key={doubt} className="list__doubt">
          {doubt}
        </p>
      ))}
    </li>
  );
}
