import { useTape } from '../../editor/tape/tape-store.ts';
import type { TapeUnit } from '../../editor/tape/tape-text.ts';
import { writeSetting } from '../../storage/settings.ts';

/** Stores in this browser the unit in which the laser tape types; null: the user is asked. */
export function keepTapeUnit(unit: TapeUnit | null): void {
  useTape.setState({ unit });
  void writeSetting('tape-unit', unit);
}
