import { paintDrawn } from '../paint/canvas.ts';
import { drawnNote, takeStrip } from '../paint/note.ts';
import type { Pen } from '../paint/pen.ts';
import { drawnCrossWords } from './cross-words.ts';
import { measuredLines, type OverlayScene } from './overlay-scene.ts';
import { pointerNote } from './pointer-note.ts';

/** The note at the pointer, and what Enter does at the keyboard's cross. */
export function paintNote(pen: Pen, scene: OverlayScene): void {
  const { state, sketch, placer } = scene;
  const note = pointerNote(state, sketch, pen.view);
  if (!note && !sketch.cross) return;
  for (const line of measuredLines(pen, scene)) takeStrip(placer, line);
  const words = drawnCrossWords(pen, scene);
  if (words) paintDrawn(pen, words);
  if (note) paintDrawn(pen, drawnNote(pen, note, state.stageSize, placer));
}
