import { useAppStore } from '../state/store.ts';
import { storedWallSettings, type WallSettings } from '../state/wall-settings.ts';
import { readSetting, writeSetting } from '../storage/settings.ts';

const NAME = 'wall-settings';

/** Restores the wall settings of this device (the taped face, thicknesses), and stores every later change. */
export async function keepWallSettings(): Promise<void> {
  const stored = storedWallSettings(await readSetting(NAME));
  const { wallSettings, setWallSettings } = useAppStore.getState();
  // Settings that the user has changed before this code was loaded take precedence.
  if (stored && wallSettings.said.length === 0) setWallSettings(stored);
  useAppStore.subscribe(({ wallSettings: now }, { wallSettings: before }) => {
    if (now !== before && !sameValues(now, before))
      void writeSetting(NAME, { by: now.by, outer: now.outer, partition: now.partition });
  });
}

function sameValues(a: WallSettings, b: WallSettings): boolean {
  return (
    a.by === b.by &&
    a.outer === b.outer &&
    a.partition === b.partition &&
    a.said.includes('by') === b.said.includes('by')
  );
}
