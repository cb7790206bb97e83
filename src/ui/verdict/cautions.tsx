import { CAUTIONS } from '../../../geometry/messages/index.ts';

/** The cautions below a verdict, since on a small page only the verdict may be in view. */
export function Cautions() {
  return <p className="fine soft">{CAUTIONS.join(' ')}</p>;
}
