import { beforeEach, describe, expect, it } from 'vitest';
import type { Tracing } from '../../../../geometry/plan/model.ts';
import { GROUND } from '../../../../src/editor/stage/ground.ts';
import { openRoom } from '../../../helpers/tool-stage.ts';

const tracing: Tracing = {
  image: '',
  name: 'sketch.png',
  width: 1000,
  height: 800,
  at: [10_000, 8000],
  scale: 20,
  turn: 0,
  opacity: 0.6,
  shown: true,
  locked: false,
};
/** What the paper lies about. */
const about = () => GROUND.find(({ name }) => name === 'sheet')?.read()[0];
const PICTURE = { minX: 0, minY: 0, maxX: 20_000, maxY: 16_000 };
const wall = { id: 'w1', from: [-500, 1000], to: [4000, 1000], thickness: 200, side: 'auto' } as const;

beforeEach(() => openRoom({ walls: [], objects: [], detectors: [] }));

describe('the paper', () => {
  it('lies about the picture that is drawn over, however large it is, until a room is closed', () => {
    expect(about()).toBeNull();
    openRoom({ walls: [], objects: [], detectors: [], tracing });
    expect(about()).toEqual(PICTURE);
    openRoom({ walls: [wall], objects: [], detectors: [], tracing });
    expect(about()).toMatchObject({ minY: 0, maxX: 20_000, maxY: 16_000 });
    expect((about() as typeof PICTURE).minX).toBeLessThanOrEqual(-500);
    openRoom({ walls: [], objects: [], detectors: [], tracing: { ...tracing, shown: false } });
    expect(about()).toBeNull();
  });

  it('lies about the house once a room is closed', () => {
    openRoom({ tracing });
    expect(about()).toEqual({ minX: -100, minY: -100, maxX: 8100, maxY: 6100 });
  });
});
