import type { Fixture } from '../plan/model.ts';
import { addAngles } from '../plane/rigid-motion.ts';

/** Returns the edited fixture with its airflow rotated by as much as its box; unchanged if the edit set the airflow itself. */
export function withStreamTurned(before: Fixture, after: Fixture): Fixture {
  const { shape, stream } = after;
  if (!stream || stream !== before.stream || !('box' in shape) || !('box' in before.shape)) return after;
  const by = shape.box.turn - before.shape.box.turn;
  return by === 0 ? after : { ...after, stream: { ...stream, direction: addAngles(stream.direction, by) } };
}
