import { CAUTIONS } from '../../../geometry/messages/index.ts';

/** The usual cautions, under whatever gives a verdict and on a small page may be all that is seen of it. */
export function Cautions() {
  return <p className="fine soft">{CAUTIONS.join(' ')}</p>;
}
