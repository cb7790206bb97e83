import { database } from './library/database.ts';

/** What this browser remembers beside the plans, say the colours of the page. */

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
    // A theme that is forgotten is no loss; the sign tells of a store out of reach when the plan is written.
  }
}
