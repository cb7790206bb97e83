import { lazy, Suspense, useLayoutEffect, useRef } from 'react';
import type { Hint } from '../../advice/guidance/hint.ts';
import { STAGE_NAME, type Stage, type StageState } from '../../advice/guidance.ts';
import { fold, showDialog, unfold, usePanels } from '../../commands/panels.ts';
import { commandById, runCommand } from '../../commands/table.ts';
import { QUESTIONS } from '../../state/questions.ts';
import { later } from '../hooks/later.tsx';
import { useGuidance, useLevel } from '../hooks/use-level.ts';
import { Palette } from '../questions/palette.tsx';
import { ColumnHead } from '../shell/column-head.tsx';
import { Hints, StillToDo } from './hints.tsx';
import './stage-column.css';

const TracingPanel = lazy(() =>
  import('./draw/tracing-panel.tsx').then((module) => ({ default: module.TracingPanel })),
);

const TestLine = later(() => import('../verdict/test-line.tsx').then((part) => part.TestLine));
const TestMark = later(() => import('../verdict/test-line.tsx').then((part) => part.TestMark));
const LevelItems = later(() => import('../inspector/item-list.tsx').then((part) => part.LevelItems));
const LevelPanel = later(() => import('./draw/level/level-panel.tsx').then((part) => part.LevelPanel));
const SitePanel = later(() => import('./site/site-panel.tsx').then((part) => part.SitePanel));
const WhoLooks = later(() => import('../questions/who-looks.tsx').then((part) => part.WhoLooks));
const TapeUnitField = later(() => import('../questions/tape-unit-field.tsx').then((part) => part.TapeUnitField));
const PlacePanel = later(() => import('./place/place-panel.tsx').then((part) => part.PlacePanel));
const TimePanel = later(() => import('./time/time-panel.tsx').then((part) => part.TimePanel));
const HousePanel = later(() => import('./house/house-panel.tsx').then((part) => part.HousePanel));
const LogPanel = later(() => import('./log/log-panel.tsx').then((part) => part.LogPanel));
const ReadPanel = later(() => import('./read/read-panel.tsx').then((part) => part.ReadPanel));
const SheetPanel = later(() => import('./sheet/sheet-panel.tsx').then((part) => part.SheetPanel));

/** The stages of the job from top to bottom. Each shows what is done and what is missing next; the open one holds its panel. */
export function StageColumn() {
  const stages = useGuidance();
  const next = stages.find(({ hints }) => hints.some((hint) => hint.missing));
  const folded = usePanels((ui) => ui.jobFolded);
  if (folded) {
    return (
      <nav className="job job--folded" aria-label="The job, folded">
        <TestMark />
        <button type="button" className="rail" onClick={() => unfold('job')}>
          The job
        </button>
      </nav>
    );
  }
  return (
    <nav className="job" aria-label="The job">
      <ColumnHead name="The job" onFold={() => fold('job')} />
      <TestLine />
      <StillToDo stages={stages} />
      <ol className="job__stages">
        {stages.map((state) => (
          <StageItem key={state.stage} state={state} next={state.stage === next?.stage} />
        ))}
      </ol>
      <Things />
    </nav>
  );
}

/** An empty level has no list, and its code is not loaded. */
function Things() {
  const { detectors, rooms, walls, openings, fixtures, objects } = useLevel();
  const some = [detectors, rooms, walls, openings, fixtures, objects].some(({ length }) => length > 0);
  return some && <LevelItems />;
}

function StageItem({
  state: { stage, done, hints, whole },
  next,
}: {
  readonly state: StageState;
  readonly next: boolean;
}) {
  const open = usePanels((ui) => ui.stage === stage);
  const item = useHeadingInView(open);
  const isListedAbove = usePanels((ui) => ui.toDoOpen);
  const missing = hints.some((hint) => hint.missing);
  const shown = open ? hints.filter(isNotRepeatedBelow) : hints.slice(0, 1);
  return (
    <li ref={item} className="stage" data-open={open || undefined} data-next={next || undefined}>
      <h2 className="stage__heading">
        <button
          type="button"
          className="stage__button"
          aria-expanded={open}
          aria-controls={`stage-${stage}`}
          aria-labelledby={`stage-${stage}-name`}
          aria-describedby={`stage-${stage}-state`}
          onClick={() => runCommand(commandById(`stage-${stage}`))}
        >
          <span className="stage__name" id={`stage-${stage}-name`}>
            {STAGE_NAME[stage]}
          </span>
          <span className="stage__state" id={`stage-${stage}-state`}>
            <span className="stage__count">{markOf(missing, next, whole)}</span>{' '}
            {done && <span className="stage__done">{done}</span>}
          </span>
        </button>
      </h2>
      {shown.length > 0 && !isListedAbove && <Hints hints={shown} />}
      <div id={`stage-${stage}`} className="stage__work" hidden={!open || undefined}>
        {open && <StageWork stage={stage} />}
      </div>
    </li>
  );
}

/**
 * Returns whether a hint is shown at the heading. A hint that opens a stage is repeated by the panel below, with the same button; of the
 * open questions only the next one is shown, because each shows its own.
 */
function isNotRepeatedBelow({ action }: Hint, index: number, hints: readonly Hint[]): boolean {
  if (action?.kind === 'question') return hints.findIndex((each) => each.action?.kind === 'question') === index;
  return action?.kind !== 'stage';
}

/** The share of the column, from its top, in which a heading leaves its panel enough space below. */
const UPPER = 0.4;

/** Scrolls the heading of a stage that opens to the top where it, or its panel, would be out of view because the stage above has folded. */
function useHeadingInView(open: boolean) {
  const item = useRef<HTMLLIElement>(null);
  const wasOpen = useRef(open);
  useLayoutEffect(() => {
    const opens = open && !wasOpen.current;
    wasOpen.current = open;
    const column = item.current?.closest('.job');
    if (!opens || !item.current || !column) return;
    const view = column.getBoundingClientRect();
    const below = item.current.getBoundingClientRect().top - view.top;
    // A stage that opens by itself, with a plan, leaves the list of what is still to do in view above it.
    const pressed = item.current.contains(document.activeElement);
    if (below < 0 || below > view.height * (pressed ? UPPER : 0.9)) item.current.scrollIntoView({ block: 'start' });
  }, [open]);
  return item;
}

/** A stage is not done while something of it lies ahead, even where nothing is missing yet. */
function markOf(missing: boolean, next: boolean, whole: boolean): string {
  if (whole) return 'done';
  return missing && next ? 'next' : '';
}

function StageWork({ stage }: { readonly stage: Stage }) {
  switch (stage) {
    case 'site':
      return <SitePanel />;
    case 'draw':
      return (
        <>
          <Palette questions={QUESTIONS.filter(({ id }) => id !== 'sit')} />
          <WhoLooks />
          <LevelPanel />
          <TapeUnitField />
          <Suspense>
            <TracingPanel />
          </Suspense>
        </>
      );
    case 'place':
      return <PlacePanel />;
    case 'time':
      return <TimePanel />;
    case 'house':
      return <HousePanel />;
    case 'log':
      return <LogPanel />;
    case 'read':
      return (
        <>
          <ReadPanel />
          <button type="button" className="button" onClick={() => showDialog({ kind: 'quality' })}>
            Quality book
          </button>
        </>
      );
    case 'sheet':
      return <SheetPanel />;
  }
}
