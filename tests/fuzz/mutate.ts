/** Mutations of plan files, as an error, a broken program or an attacker may make them. All depends only on the seed. */

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Returns a generator of integers from 0 to less than `below`, the same for the same seed: mulberry32 (public domain). */
export function randomOf(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * below);
  };
}

const NUMBERS = [0, -0, 1, -1, 0.1, 1e-9, 50.8, 914.4, 1e4, 1e5, 1e7, -1e7, 1e308, 5e-324, 2 ** 53, 90, 360, -360.5];
const TEXTS = [
  '',
  ' ',
  '\u0000\u0007\u001b[2J',
  '=1+1',
  '＝cmd',
  '<script>alert(1)</script>',
  ']]>&amp;"\'',
  '\ud800',
  '\u202eclear',
  'W'.repeat(201),
  'a\r\nb\u2028c',
  '../../etc',
  '__proto__',
  '2026-02-30T00:00:00Z',
  '2126-03-07T18:00:00-05:00',
  '2026-03-08T02:30:00-05:00',
  'America/New_York',
  '🏠'.repeat(50),
];

/** Returns a mutated copy of a plan file's value. Half are mutated gently, so that most of them are still plans and test more than the reader. */
export function mutated(value: Json, seed: number): Json {
  const random = randomOf(seed);
  const copy = structuredClone(value);
  const mutate = random(2) === 0 ? mutateOnce : mutateGently;
  for (let count = 1 + random(4); count > 0; count--) mutate(copy, random);
  return copy;
}

/** Changes a number a little, or removes or repeats an item of a list, as a person or rounding may do. */
function mutateGently(root: Json, random: (below: number) => number): void {
  const numbers: [holder: Record<string | number, Json>, key: string, value: number][] = [];
  const lists: Json[][] = [];
  const visit = (here: Json): void => {
    if (typeof here !== 'object' || here === null) return;
    if (Array.isArray(here) && typeof here[0] === 'object') lists.push(here);
    for (const [key, part] of Object.entries(here)) {
      if (typeof part === 'number') numbers.push([here as Record<string, Json>, key, part]);
      else visit(part);
    }
  };
  visit(root);
  const list = lists[random(Math.max(1, lists.length))];
  const number = numbers[random(Math.max(1, numbers.length))];
  const step = GENTLE[random(GENTLE.length)] as number;
  if (random(4) > 0 && number) number[0][number[1]] = number[2] + step;
  else if (list && random(2) === 0) list.splice(random(list.length), 1);
  else if (list && list.length > 0) list.push(withNewIds(structuredClone(list[random(list.length)] as Json), random));
}

/** Steps in mm, hours, degrees or pCi/L: below and above every tolerance of the engine. */
const GENTLE = [1e-9, 1e-6, 0.005, -0.01, 0.1, -0.1, 1, 3, -12.7, 25.4, 90, -305, 914.4, -3000];

/** Returns the value with another id. */
function withNewIds(value: Json, random: (below: number) => number): Json {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return 'id' in value ? { ...value, id: `${value.id}-${random(1e9)}` } : value;
}

function mutateOnce(root: Json, random: (below: number) => number): void {
  const places: [holder: Json[] | { [key: string]: Json }, key: string | number][] = [];
  const visit = (here: Json): void => {
    if (typeof here !== 'object' || here === null) return;
    for (const key of Object.keys(here)) {
      const step = Array.isArray(here) ? Number(key) : key;
      places.push([here, step]);
      visit((here as Record<string, Json>)[key] as Json);
    }
  };
  visit(root);
  const [holder, key] = places[random(places.length)] ?? [];
  if (!holder || key === undefined) return;
  const items = holder as Record<string | number, Json>;
  const old = items[key] as Json;
  const pick = <T>(list: readonly T[]): T => list[random(list.length)] as T;
  const put = (now: Json) => {
    items[key] = now;
  };
  switch (random(9)) {
    case 0:
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete items[key];
      break;
    case 1:
      if (Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(old));
      else items[`${key}s`] = old;
      break;
    case 2:
      put(pick(NUMBERS));
      break;
    case 3:
      put(pick(TEXTS));
      break;
    case 4:
      put(typeof old === 'number' ? old + pick([0.1, -0.1, 1e-6, 25.4, -914.4]) : null);
      break;
    case 5:
      put(typeof old === 'number' ? old * pick([-1, 0.001, 10, 1000]) : !old);
      break;
    case 6: {
      const key = pick(['id', 'at', 'kind', 'shape', 'from']);
      const other = pick(places)[0];
      put(Object.hasOwn(other, key) ? structuredClone((other as Record<string, Json>)[key] as Json) : []);
      break;
    }
    case 7: {
      const [other, otherKey] = pick(places);
      const from = (other as Record<string | number, Json>)[otherKey] as Json;
      if (JSON.stringify(from).length < 20_000) put(structuredClone(from));
      break;
    }
    default:
      if (Array.isArray(old)) old.reverse();
      else put(pick([[], {}, true]));
  }
}

/** Returns the text with a few characters changed, dropped or doubled. */
export function mutatedText(text: string, seed: number): string {
  const random = randomOf(seed);
  let now = text;
  for (let count = 1 + random(3); count > 0; count--) {
    const at = random(now.length);
    const sign = ['{', '}', '[', ']', '"', ',', ':', '\\', '0', '-', 'e', '\u0000', ''][random(13)] ?? '';
    now = now.slice(0, at) + sign + now.slice(at + random(2));
  }
  return now;
}
