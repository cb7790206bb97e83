import { isTapedBy, type TapedBy } from '../../geometry/dimension/taped-by.ts';
import type { Mm } from '../../geometry/plan/model.ts';
import { WALL_THICKNESS } from './defaults.ts';

/** How walls are taped and how thick they are drawn, on this device: never in the plan. */
export interface WallSettings {
  readonly by: TapedBy;
  /** Thickness of a new exterior wall. */
  readonly outer: Mm;
  readonly partition: Mm;
  /** The settings that the user has answered; the others are assumed. */
  readonly said: readonly WallSetting[];
}
type WallSetting = 'by' | 'outer' | 'partition';

export const FIRST_WALL_SETTINGS: WallSettings = { by: 'inside', ...WALL_THICKNESS, said: [] };

/** Returns the settings with a change that the user has answered. */
export function withSaid(settings: WallSettings, change: Partial<Omit<WallSettings, 'said'>>): WallSettings {
  const said = new Set([...settings.said, ...(Object.keys(change) as WallSetting[])]);
  return { ...settings, ...change, said: [...said] };
}

/** Returns the settings for another plan: lengths are taped as before, but its walls have not been measured. */
export function forAnotherPlan(settings: WallSettings): WallSettings {
  return { ...settings, said: settings.said.filter((each) => each === 'by') };
}

/** Returns the settings from a value that the browser has stored; null if it is not of this form. */
export function storedWallSettings(value: unknown): WallSettings | null {
  if (typeof value !== 'object' || value === null) return null;
  const { by, outer, partition } = value as Readonly<Record<string, unknown>>;
  const isThickness = (mm: unknown): mm is Mm => typeof mm === 'number' && mm > 0 && mm < 2000;
  if (!isTapedBy(by) || !isThickness(outer) || !isThickness(partition)) return null;
  return { by, outer, partition, said: ['by'] };
}
