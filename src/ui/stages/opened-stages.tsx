import { useState } from 'react';
import type { Stage } from '../../advice/stages.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { StageWork } from './stage-work.tsx';

interface Props {
  /** The stages that are shown in this place. */
  readonly stages: readonly Stage[];
  /** The open stage; it may be shown in another place. */
  readonly open: Stage;
}

/** The work of the open stage. Stages that were opened earlier stay mounted with their typed text, until another plan is opened. */
export function OpenedStages(props: Props) {
  const plan = useLibrary(({ openId }) => openId);
  return <Opened key={plan} {...props} />;
}

function Opened({ stages, open }: Props) {
  const [opened, setOpened] = useState<readonly Stage[]>([]);
  if (stages.includes(open) && !opened.includes(open)) setOpened([...opened, open]);
  return opened.map((stage) => (
    <div key={stage} id={`stage-${stage}`} className="stage__work" hidden={stage !== open || undefined}>
      <StageWork stage={stage} />
    </div>
  ));
}
