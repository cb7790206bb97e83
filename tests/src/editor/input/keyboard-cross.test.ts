import { beforeEach, describe, expect, it, vi } from 'vitest';
import { enterWords } from '../../../../src/editor/input/enter-words.ts';
import { hideCross, moveCross, pressAtCross, showCross } from '../../../../src/editor/input/keyboard-cross.ts';
import { putCross } from '../../../../src/editor/overlay/sketch.ts';
import { setActiveTool } from '../../../../src/editor/tools/active-tool.ts';
import { createTool } from '../../../../src/editor/tools/create-tool.ts';
import type { Tool } from '../../../../src/state/tool.ts';
import { key, openRoom, sketch, state } from '../../../helpers/tool-stage.ts';

vi.stubGlobal('document', { getElementById: () => null });
const RIGHT = [1, 0] as const;
const coarse = (name: string) => ({ ...key(name), ctrlKey: true }) as KeyboardEvent;
const take = (tool: Tool) => {
  state().setTool(tool);
  setActiveTool(createTool(tool));
};
const words = () => enterWords(state(), sketch());

beforeEach(() => {
  openRoom();
  state().closeMenu();
  state().select([]);
  putCross([4000, 1000]);
  hideCross();
  take({ kind: 'select' });
});

describe('the cross of the keyboard', () => {
  it('comes back where it was, after the keyboard was elsewhere and after an undo', () => {
    showCross();
    expect(sketch().cross).toEqual([4000, 1000]);
    moveCross(RIGHT, key('ArrowRight'));
    expect(sketch().cross).toEqual([4010, 1000]);
    hideCross();
    state().undo();
    expect(sketch().cross).toBeNull();
    showCross();
    expect(sketch().cross).toEqual([4010, 1000]);
  });

  it('begins in the middle of the stage where its place is out of view', () => {
    putCross([90_000, 90_000]);
    hideCross();
    showCross();
    expect(sketch().cross).toEqual([5000, 4000]);
  });

  it('stops on a wall that is in its way, then goes on', () => {
    putCross([7950, 1000]);
    moveCross(RIGHT, coarse('ArrowRight'));
    expect(sketch().cross).toEqual([8000, 1000]);
    moveCross(RIGHT, coarse('ArrowRight'));
    expect(sketch().cross).toEqual([8100, 1000]);
  });

  it('stops on the face of a wall with a thing to set down, on its middle with an opening', () => {
    take({ kind: 'fixture', fixture: 'sump-pit' });
    putCross([7850, 1000]);
    moveCross(RIGHT, coarse('ArrowRight'));
    expect(sketch().cross).toEqual([7900, 1000]);
    take({ kind: 'opening', opening: 'door' });
    moveCross(RIGHT, coarse('ArrowRight'));
    expect(sketch().cross).toEqual([8000, 1000]);
  });

  it('never leaves the stage, and the plan never leaves it either', () => {
    putCross([4000, 3000]);
    for (let step = 0; step < 400; step++) moveCross(RIGHT, coarse('ArrowRight'));
    const { viewport, stageSize } = state();
    const x = (sketch().cross?.[0] ?? 0) * viewport.scale + viewport.x;
    expect(x).toBeLessThanOrEqual(stageSize.width);
    expect(8100 * viewport.scale + viewport.x).toBeGreaterThanOrEqual(64 - 1e-6);
  });
});

describe('Enter at the cross', () => {
  it.each<[Tool, string]>([
    [{ kind: 'select' }, 'Enter asks what this room is used for'],
    [{ kind: 'wall' }, 'Enter begins the wall'],
    [{ kind: 'room-box' }, 'Enter sets the first corner of the room'],
    [{ kind: 'frame' }, 'Enter sets the first corner of the frame'],
    [{ kind: 'opening', opening: 'window' }, 'No wall here for the window'],
    [{ kind: 'room', use: 'bedroom' }, 'Enter names this room: bedroom'],
    [{ kind: 'fixture', fixture: 'sump-pit' }, 'Enter sets the sump pit here'],
    [{ kind: 'object', object: 'desk' }, 'Enter sets the desk here'],
    [{ kind: 'detector' }, 'Enter places the detector'],
    [{ kind: 'ask' }, 'Enter lists what can be done here'],
    [{ kind: 'center' }, 'Enter brings this spot to the middle'],
    [{ kind: 'move-here', ids: ['o1'] }, 'Enter moves it here'],
    [{ kind: 'grip', id: 'o1' }, 'Enter takes the grip, then sets it'],
    [{ kind: 'split-wall', id: 'w1' }, 'Enter splits the wall'],
    [{ kind: 'tracing', task: 'scale' }, 'Enter sets the point'],
  ])('with %j: %s', (tool, said) => {
    take(tool);
    showCross();
    expect(words()).toBe(said);
  });

  it('selects what is there, then lists what can be done with it', () => {
    putCross([2000, 2000]);
    expect(words()).toBe('Enter selects the desk');
    expect(pressAtCross(false)).toBe(true);
    expect(state().selection).toEqual(['o1']);
    expect(words()).toBe('Arrows move the desk, Enter lists what can be done, Escape lets go');
    pressAtCross(false);
    expect(state().menu?.ids).toEqual(['o1']);
  });

  it('asks what a room is used for that has no use, and lists what can be done in one that has', () => {
    putCross([6000, 1500]);
    expect(words()).toBe('Enter asks what this room is used for');
    pressAtCross(false);
    expect(state().roomAsked).not.toBeNull();
    expect(state().menu).toBeNull();
    state().askRoom(null);
    state().addItem('rooms', { name: 'Den', use: 'den', at: [6000, 1500] });
    state().select([]);
    putCross([3000, 3500]);
    expect(words()).toBe('Enter lists what can be done here');
    pressAtCross(false);
    expect(state().roomAsked).toBeNull();
    expect(state().menu).not.toBeNull();
  });

  it('tells each press of a run of walls beforehand, and does it', () => {
    take({ kind: 'wall' });
    const corner = (x: number, y: number) => {
      putCross([x, y]);
      moveCross(RIGHT, { ...key('ArrowRight'), shiftKey: true } as KeyboardEvent);
      putCross([x, y]);
      const said = words();
      pressAtCross(false);
      return said;
    };
    expect(corner(1000, 3500)).toBe('Enter begins the wall');
    expect(words()).toBe('An arrow shows the direction, Enter ends the walls');
    expect(corner(3000, 3500)).toBe('Enter sets the corner');
    expect(state().chain.corners).toHaveLength(2);
  });

  it('does nothing where there is no cross', () => {
    hideCross();
    expect(pressAtCross(false)).toBe(false);
    expect(words()).toBe('');
  });
});
