import { ACT_GROUPS, type Act, type ActPlace } from './act.ts';
import { COPY_ACTS } from './copy-acts.ts';
import { SHEET_ACTS } from './sheet-acts.ts';
import { THING_ACTS } from './thing-acts.ts';
import { WALL_ACTS } from './wall-acts.ts';

/** Everything that can be done with a thing or a spot of the sheet: the panel's buttons, the list of acts and the list of keys show it. */
export const ACTS: readonly Act[] = [...THING_ACTS, ...WALL_ACTS, ...COPY_ACTS, ...SHEET_ACTS];

/** What applies, section by section; sections with nothing in them are left out. */
export function actsFor(place: ActPlace): readonly (readonly Act[])[] {
  return ACT_GROUPS.map((group) => ACTS.filter((act) => act.group === group && act.applies(place))).filter(
    (acts) => acts.length > 0,
  );
}
