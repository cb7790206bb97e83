/** Largest number of smaller cases to try. */
const MOST_TRIES = 400;

/** Returns the smallest text found that still fails: parts of the plan are removed one by one while it fails. */
export async function minimized(text: string, fails: (text: string) => Promise<boolean>): Promise<string> {
  let now: unknown;
  try {
    now = JSON.parse(text);
  } catch {
    return text; // broken text is not minimized
  }
  let tries = 0;
  for (let changed = true; changed && tries < MOST_TRIES; ) {
    changed = false;
    for (const without of smaller(now)) {
      if (tries++ > MOST_TRIES) break;
      if (!(await fails(JSON.stringify(without)))) continue;
      now = without;
      changed = true;
      break;
    }
  }
  return JSON.stringify(now, null, 1);
}

/** Yields copies of a value without one of its parts, large parts first. */
function* smaller(value: unknown): Generator<unknown> {
  if (typeof value !== 'object' || value === null) return;
  const entries = Object.entries(value);
  for (const [key] of entries) {
    if (Array.isArray(value)) yield value.filter((_, index) => index !== Number(key));
    else yield Object.fromEntries(entries.filter(([other]) => other !== key));
  }
  for (const [key, part] of entries) {
    for (const less of smaller(part)) {
      if (Array.isArray(value)) yield value.map((each, index) => (index === Number(key) ? less : each));
      else yield Object.fromEntries(entries.map(([other, each]) => [other, other === key ? less : each]));
    }
  }
}
