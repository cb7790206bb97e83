import { ACT_GROUPS, type Act, type ActPlace } from './command.ts';
import { COPY_ACTS } from './copy-commands.ts';
import { SHEET_ACTS } from './sheet-commands.ts';
import { THING_ACTS } from './thing-commands.ts';
import { WALL_ACTS } from './wall-commands.ts';

/** Everything that can be done with a thing or a spot of the sheet: the panel's buttons, the list of acts and the list of keys show it. */
export const ACTS: readonly Act[] = [...THING_ACTS, ...WALL_ACTS, ...COPY_ACTS, ...SHEET_ACTS];

/** What applies, section by section; sections with nothing in them are left out. */
export function actsFor(place: ActPlace): readonly (readonly Act[])[] {
  return ACT_GROUPS.map((group) => ACTS.filter((act) => act.group === group && act.applies(place))).filter(
    (acts) => acts.length > 0,
  );
}
