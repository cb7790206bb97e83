import { database } from './library/database.ts';

/** Settings of this browser, such as the theme. */

export async function readSetting(name: string): Promise<unknown> {
  try {
    return await (await database()).get('settings', name);
  } catch {
    return undefined;
  }
}

export async function writeSetting(name: string, value: unknown): Promise<void> {
  try {
    await (await database()).put('settings', value, name);
  } catch {
    // A lost setting does no harm; the save status reports a failing store when the plan is written.
  }
}
