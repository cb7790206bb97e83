import type { Detector } from '../../geometry/plan/model.ts';

/** Returns the label of a detector, or its id where it has none. */
export const detectorLabel = ({ label, id }: Detector): string => label.trim() || id;
