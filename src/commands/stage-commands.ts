import { STAGE_NAME, STAGES } from '../advice/stages.ts';
import type { Command } from './command.ts';
import { openVisit, pressStage } from './panels.ts';

/** Commands that open a stage of the test, or the page of the two visits. */
export const STAGE_COMMANDS: readonly Command[] = [
  ...STAGES.map((stage) => ({
    id: `stage-${stage}`,
    name: STAGE_NAME[stage],
    run: () => pressStage(stage),
  })),
  { id: 'visit', name: 'Visit', run: openVisit },
];
