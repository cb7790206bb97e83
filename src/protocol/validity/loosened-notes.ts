import { changeWord, insteadOf } from '../../../geometry/messages/override.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';

/** Returns a note for each distance of the plan that is looser than published, to be shown wherever the test is called valid. */
export const loosenedNotes = ({ protocol, display }: Pick<Plan, 'protocol' | 'display'>): readonly string[] =>
  effectiveRules(protocol).flatMap(({ name, least, override }) =>
    override?.loosened && least !== null
      ? [
          `${changeWord(least, override)}: ${name}: ${insteadOf(least, override, display.length)} (${override.note.trim().replace(/\.$/, '')}).`,
        ]
      : [],
  );
