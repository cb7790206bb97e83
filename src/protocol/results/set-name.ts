import { listed } from '../../../geometry/messages/index.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import type { ReadingSet } from './sets.ts';

export const detectorLabel = ({ label, id }: Detector): string => label.trim() || id;

/** The location in words: "A1 and A2, side by side". */
export function setName({ set }: { readonly set: Pick<ReadingSet, 'detectors'> }): string {
  const names = set.detectors.map(detectorLabel);
  return names.length > 1 ? `${listed(names)}, side by side` : (names[0] ?? '');
}
