import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { cancelInNextFrame, flushInput, inNextFrame, isFramePending } from '../../../../src/editor/stage/frame-loop.ts';

let frames: (() => void)[] = [];
/** Runs what waits for the next animation frame. */
const nextFrame = () => {
  for (const run of frames.splice(0)) run();
};

beforeEach(() => {
  frames = [];
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => frames.push(run));
});
afterEach(() => {
  nextFrame();
  vi.unstubAllGlobals();
});

it('does input before painting, and each piece of work once', () => {
  const done: string[] = [];
  const paint = () => done.push('paint');
  const input = () => done.push('input');
  inNextFrame('paint', paint);
  inNextFrame('input', input);
  inNextFrame('paint', paint);
  expect(done).toEqual([]);
  expect(isFramePending()).toBe(true);
  nextFrame();
  expect(done).toEqual(['input', 'paint']);
  expect(isFramePending()).toBe(false);
});

it('paints in the same frame what input asks for, and in the one after what painting asks for', () => {
  const done: string[] = [];
  const again = () => done.push('again');
  const paint = () => {
    done.push('paint');
    inNextFrame('paint', again);
  };
  inNextFrame('input', () => inNextFrame('paint', paint));
  nextFrame();
  expect(done).toEqual(['paint']);
  nextFrame();
  expect(done).toEqual(['paint', 'again']);
});

it('does waiting input at once where something must find it done, and not again', () => {
  const done: string[] = [];
  const input = () => done.push('input');
  flushInput(input);
  expect(done).toEqual([]);
  inNextFrame('input', input);
  flushInput(input);
  nextFrame();
  expect(done).toEqual(['input']);
});

it('does nothing that was taken back', () => {
  const done: string[] = [];
  const paint = () => done.push('paint');
  inNextFrame('paint', paint);
  cancelInNextFrame(paint);
  nextFrame();
  expect(done).toEqual([]);
});
