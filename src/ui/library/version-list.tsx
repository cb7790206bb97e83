import { useEffect, useRef, useState } from 'react';
import type { Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { countsOf, planChanges } from '../../storage/library/changes.ts';
import { readWork } from '../../storage/library/plans.ts';
import { previewOf } from '../../storage/library/preview.ts';
import type { PlanSummary, VersionReason } from '../../storage/library/records.ts';
import { type EarlierPlan, readVersions } from '../../storage/library/versions.ts';
import { fullWhenWords } from './dates.ts';
import { bringBack } from './library-actions.ts';
import { PlanPicture } from './plan-picture.tsx';

const WHY: Readonly<Record<VersionReason, string>> = {
  rest: '',
  file: 'saved as a file',
  'other-tab': 'from another tab',
  'brought-back': 'before an earlier one was restored',
  imported: 'before a later one was imported',
};

interface Versions {
  readonly now: Plan | null;
  readonly earlier: readonly EarlierPlan[];
}

/** The earlier versions of a plan, to view, to compare with the present state, and to restore. */
export function VersionList({ summary, onBack }: { readonly summary: PlanSummary; readonly onBack: () => void }) {
  const [versions, setVersions] = useState<Versions>();
  const [chosen, setChosen] = useState<EarlierPlan>();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  useEffect(() => {
    let gone = false;
    const read = Promise.all([readWork(summary.id), readVersions(summary.id)]);
    read.then(
      ([stored, earlier]) => !gone && setVersions({ now: planOf(stored?.text ?? null), earlier }),
      () => !gone && setVersions({ now: null, earlier: [] }),
    );
    return () => {
      gone = true;
    };
  }, [summary]);
  return (
    <div className="versions">
      <button type="button" className="text-button" onClick={onBack}>
        Back to its details
      </button>
      <h4 ref={heading} tabIndex={-1}>
        Earlier versions
      </h4>
      {versions?.earlier.length === 0 && (
        <p>No version yet. One is kept whenever you pause for a minute, and every three minutes while you draw.</p>
      )}
      <ul className="rows">
        {versions?.earlier.map((version) => (
          <li key={`${version.at} ${version.why}`}>
            <button type="button" className="row" aria-pressed={version === chosen} onClick={() => setChosen(version)}>
              <strong>{fullWhenWords(version.at)}</strong>
              {WHY[version.why] && <span>{WHY[version.why]}</span>}
            </button>
          </li>
        ))}
      </ul>
      {/* Below the list, so that the pressed row of the list does not move. */}
      {chosen && <OneVersion summary={summary} version={chosen} now={versions?.now ?? null} />}
    </div>
  );
}

interface OneVersionProps {
  readonly summary: PlanSummary;
  readonly version: EarlierPlan;
  readonly now: Plan | null;
}

function OneVersion({ summary, version, now }: OneVersionProps) {
  const plan = planOf(version.text);
  if (!plan) return <p role="alert">This version could not be read.</p>;
  const since = now ? planChanges(plan, now) : [];
  const when = fullWhenWords(version.at);
  return (
    <section className="version" aria-label={`As it was ${when}`}>
      <PlanPicture picture={previewOf(plan).picture} />
      <p>{countsOf(plan)}</p>
      {since.length === 0 ? (
        <p>The plan is the same now.</p>
      ) : (
        <>
          <p>Since then:</p>
          <ul className="version__changes">
            {since.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
          <button type="button" className="button button--main" onClick={() => void bringBack(summary, plan, when)}>
            Restore this version
          </button>
        </>
      )}
    </section>
  );
}

function planOf(text: string | null): Plan | null {
  const read = text === null ? null : parsePlan(text);
  return read?.ok ? read.plan : null;
}
