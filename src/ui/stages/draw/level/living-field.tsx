import { withLiving } from '../../../../../geometry/edit/index.ts';
import { capital, LIVING_PHRASE } from '../../../../../geometry/messages/index.ts';
import type { Level, Living } from '../../../../../geometry/plan/model.ts';
import { useAppStore } from '../../../../state/store.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';

const LIVINGS = (Object.entries(LIVING_PHRASE) as [Living, string][]).map(([value, words]) => ({
  value,
  words: capital(words),
}));

/** A field for whether people live on a level. Never assumed, since it decides which level is tested. */
export function LivingField({
  level,
  ...field
}: {
  readonly level: Level;
  readonly label: string;
  readonly fieldId?: string;
}) {
  const run = useAppStore((state) => state.run);
  return (
    <ChoiceField
      {...field}
      value={level.livingAnswered === false ? null : level.living}
      choices={LIVINGS}
      onCommit={(living) => run((plan) => withLiving(plan, level.id, living))}
    />
  );
}

/** Returns in words whether people live on a level. */
export function livingWords({ living, livingAnswered }: Level): string {
  return livingAnswered === false ? 'not answered whether people live here' : LIVING_PHRASE[living];
}
