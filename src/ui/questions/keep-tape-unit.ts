import { useTape } from '../../editor/tape/tape-store.ts';
import type { TapeUnit } from '../../editor/tape/tape-text.ts';
import { writeSetting } from '../../storage/settings.ts';

/** Remembers in this browser in which unit the laser tape types; null: it is asked for. */
export function keepTapeUnit(unit: TapeUnit | null): void {
  useTape.setState({ unit });
  void writeSetting('tape-unit', unit);
}
