import { useMemo, useState } from 'react';
import { movedItems } from '../../../../geometry/edit/index.ts';
import { describeAssumedTop } from '../../../../geometry/messages/assumed-top.ts';
import { describeFurniture, describeFurnitureMove } from '../../../../geometry/messages/index.ts';
import { subjectName } from '../../../../geometry/messages/subject.ts';
import type { PlanObject } from '../../../../geometry/plan/model.ts';
import { furnitureVerdict } from '../../../../geometry/search/furniture.ts';
import { STEPS } from '../../../editor/tools/tool-context.ts';
import { refuseLocked } from '../../../state/locked-detectors.ts';
import { selectLevelBar, selectModel, selectProbe } from '../../../state/selectors.ts';
import { setPlace } from '../../../state/spots.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { useLevel, usePlan } from '../../hooks/use-level.ts';
import { useThrottled } from '../../hooks/use-throttled.ts';
import './spots.css';

const MEMBERS = [
  { value: '1', words: 'one detector' },
  { value: '2', words: 'a pair' },
] as const;
type Members = (typeof MEMBERS)[number]['value'];

/** For a chosen piece of furniture: whether detectors may be placed on it, why not, and how far it would have to be moved. */
export function OnFurniture() {
  const { objects } = useLevel();
  const bar = useAppStore(selectLevelBar);
  const [chosen, setChosen] = useState('');
  const [members, setMembers] = useState<Members>('1');
  if (bar || objects.length === 0) return null;
  const object = objects.find(({ id }) => id === chosen);
  const names = objects.map((each) => ({ value: each.id, words: each.name.trim() || 'A thing without a name' }));
  return (
    <section className="spots" aria-labelledby="on-furniture-heading">
      <h3 id="on-furniture-heading">On this piece?</h3>
      <ChoiceField
        label="Furniture"
        value={object ? chosen : ''}
        choices={[{ value: '', words: 'none chosen' }, ...names]}
        onCommit={setChosen}
      />
      <ChoiceField label="For" value={members} choices={MEMBERS} onCommit={setMembers} />
      {object && <Verdict key={object.id} object={object} members={members === '1' ? 1 : 2} />}
    </section>
  );
}

function Verdict({ object, members }: { readonly object: PlanObject; readonly members: 1 | 2 }) {
  const plan = usePlan();
  const model = useThrottled(selectModel);
  const { radius, tall } = useAppStore(selectProbe);
  const verdict = useMemo(() => {
    return furnitureVerdict(plan, model, object, { radius, tall }, members, STEPS[plan.display.length].grid);
  }, [plan, model, object, radius, tall, members]);
  const { level } = model;
  const move = verdict.kind === 'near' ? verdict.move : null;
  return (
    <>
      <p role="status">
        {[
          describeFurniture(verdict, object, members, plan, level),
          describeAssumedTop(level, object, plan.display.length),
        ].join(' ')}
      </p>
      <div className="buttons">
        {move && (
          <button
            type="button"
            className="button button--main"
            onClick={() => {
              const state = useAppStore.getState();
              if (!refuseLocked(state, [object.id]))
                state.run((now) => movedItems(now, level.id, [object.id], ...move.way));
            }}
          >
            {describeFurnitureMove(move, subjectName(level, object.id), plan)}
          </button>
        )}
        {verdict.kind === 'good' && (
          <button
            type="button"
            className="button button--main"
            onClick={() => {
              const place = { axes: verdict.at, base: object.top, on: object.id, margin: verdict.margin };
              setPlace({ ...place, limitedBy: null, mutual: true }, { radius, tall, base: object.top });
            }}
          >
            {members === 1 ? 'Place one there' : 'Place a pair there'}
          </button>
        )}
      </div>
    </>
  );
}
