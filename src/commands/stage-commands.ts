import { STAGE_NAME, type Stage } from '../advice/guidance.ts';
import type { Command } from './command.ts';
import { openVisit, pressStage } from './panels.ts';

/** Commands that open a stage of the test, or the page of the two visits. */
export const STAGE_COMMANDS: readonly Command[] = [
  ...(Object.keys(STAGE_NAME) as Stage[]).map((stage) => ({
    id: `stage-${stage}`,
    name: STAGE_NAME[stage],
    run: () => pressStage(stage),
  })),
  { id: 'visit', name: 'Visit', run: openVisit },
];
