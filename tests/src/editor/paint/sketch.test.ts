import { expect, it } from 'vitest';
import { drawnSketch } from '../../../../src/editor/paint/sketch.ts';
import { level, openRoom, sketch } from '../../../helpers/tool-stage.ts';

it('a line between two points has its length on it, and none where the length is not known yet', () => {
  openRoom();
  const measured = {
    ...sketch(),
    gaps: [
      [
        [0, 0],
        [3000, 0],
      ],
    ] as const,
  };
  const drawn = drawnSketch(measured, null, level(), 'metric', 10);
  expect(drawn.texts.map(({ text }) => text)).toEqual(['3.00 m']);
  const bare = drawnSketch(measured, null, level(), null, 10);
  expect(bare.texts).toEqual([]);
  expect(bare.shapes).toEqual(drawn.shapes);
});
