import { CAUTIONS } from '../../../geometry/messages/index.ts';

/** The usual cautions below a verdict: on a small page the verdict may be all that is in view. */
export function Cautions() {
  return <p className="fine soft">{CAUTIONS.join(' ')}</p>;
}
