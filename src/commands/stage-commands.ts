import { STAGE_NAME, type Stage } from '../advice/guidance.ts';
import type { Command } from './command.ts';
import { openStage, usePanels } from './panels.ts';

/** Opens a stage of the job; folds the one that is open. */
export const STAGE_COMMANDS: readonly Command[] = (Object.keys(STAGE_NAME) as Stage[]).map((stage) => ({
  id: `stage-${stage}`,
  name: STAGE_NAME[stage],
  run: () => openStage(usePanels.getState().stage === stage ? null : stage),
}));
