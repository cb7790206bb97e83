import type { ReactNode } from 'react';
import { levelBelow } from '../../../../geometry/edit/index.ts';
import type { Level, Plan } from '../../../../geometry/plan/model.ts';
import { levelHeading, levelName } from '../../../../geometry/plan/nouns.ts';
import type { HintTool } from '../../../advice/guidance/hint.ts';
import { followHint } from '../../../commands/go-to.ts';
import { copyLevelOutline } from '../../../commands/late-edits.ts';
import { useAppStore } from '../../../state/store.ts';
import { useLevel } from '../../hooks/use-level.ts';
import { CommandButton } from '../../shell/command-button.tsx';
import { PictureButton } from './picture-button.tsx';
import './empty-sheet.css';

/** Ways to start drawing, each with its purpose. Shown on an empty level while no tool is chosen. */
export function EmptySheet() {
  const level = useLevel();
  const isBusy = useAppStore((state) => state.tool.kind !== 'select' || state.previewPlan !== null);
  const plan = useAppStore((state) => state.plan);
  if (!isEmpty(level) || isBusy) return null;
  const take = (tool: HintTool) => followHint({ kind: 'tool', label: '', levelId: level.id, tool });
  const copied = levelToCopy(plan, level);
  const first = plan.levels.length < 2;
  return (
    <section className="empty" aria-label="Where to start">
      <h2>
        {first
          ? 'Start with the room that you are in.'
          : `${levelHeading(level)} is empty. ${copied ? `Copy ${levelName(copied)}, or draw it.` : 'Draw it.'}`}
      </h2>
      <ul className="empty__ways">
        {copied && (
          <Way what="Its exterior walls, in the same place. Then check where this level differs.">
            <button
              type="button"
              className="button button--main"
              onClick={() => copyLevelOutline(copied.id, { openings: false, insideWalls: false })}
            >
              Copy the outline of {levelName(copied)}
            </button>
          </Way>
        )}
        <Way what="Drag from one inside corner to the opposite one. Correct the lengths afterward.">
          <button
            type="button"
            className={copied ? 'button' : 'button button--main'}
            onClick={() => take({ kind: 'room-box' })}
          >
            Four walls in one drag
          </button>
        </Way>
        {first && (
          <Way what="For the people who live here: a few answers, nothing to draw. Where to place the kit, when to start and when to pick it up.">
            <CommandButton command="quick-card" />
          </Way>
        )}
        <Way what="Wall after wall with the tape: point the way, type the length, press Enter.">
          <button type="button" className="button" onClick={() => take({ kind: 'wall' })}>
            Type the lengths
          </button>
        </Way>
        <Way what="A sketch or an old plan: set its scale, then draw on top of it.">
          <PictureButton className="button" words="Draw over a photo" />
        </Way>
        {first && (
          <Way what="An invented house, to see how it works.">
            <CommandButton command="plans">Look at a sample</CommandButton>
          </Way>
        )}
      </ul>
      <p className="small soft empty__drop">Or drop a plan file or a picture anywhere on this page.</p>
    </section>
  );
}

function isEmpty({ tracing, walls, rooms, fixtures, objects, detectors }: Level): boolean {
  return !tracing && [walls, rooms, fixtures, objects, detectors].every((items) => items.length === 0);
}

/** Returns the level whose outline can be copied to a level: the one below it, else another one; null if that one has no walls. */
function levelToCopy(plan: Plan, { id }: Level): Level | null {
  const below = plan.levels.some((each) => each.id === id) ? levelBelow(plan, id) : null;
  const source = below ?? plan.levels.find((each) => each.id !== id);
  return source && source.walls.length > 0 ? source : null;
}

function Way({ what, children }: { readonly what: string; readonly children: ReactNode }) {
  return (
    <li className="empty__way">
      {children}
      <span>{what}</span>
    </li>
  );
}
