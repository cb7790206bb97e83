import { quoted, type Step } from '../problem.ts';
import { isRecord } from '../schema/walk.ts';

/** A path in words: the item, and the key inside it ("" for the item itself). */
export interface PathDescription {
  readonly item: string;
  readonly key: string;
}

const NOUN: Readonly<Record<string, string>> = {
  levels: 'level',
  walls: 'wall',
  openings: 'opening',
  rooms: 'room label',
  fixtures: 'fixture',
  objects: 'object',
  detectors: 'detector',
  readings: 'reading',
  conditions: 'condition',
  overrides: 'override',
  days: 'working day',
  log: 'log entry',
  custody: 'transfer',
  weather: 'note on the weather',
  earlier: 'earlier result',
  quality: 'blank or spike',
};

/**
 * Names the innermost item on a path by kind and id ("Wall w3 on level L1"), or by its number, counted from 1, when
 * it has no id ("Reading 2"). The value need not be valid.
 */
export function describePath(value: unknown, path: readonly Step[]): PathDescription {
  const names: string[] = [];
  let key: Step[] = [];
  let here: unknown = value;
  let list = '';
  for (const step of path) {
    here = stepInto(here, step);
    key.push(step);
    const noun = NOUN[list];
    if (typeof step === 'number' && noun) {
      names.unshift(nameOf(noun, here, step));
      key = [];
    }
    list = String(step);
  }
  const item = names.join(' on ') || 'The plan';
  return { item: item.charAt(0).toUpperCase() + item.slice(1), key: keyWords(key) };
}

/** Returns the kind and id of an item of the file: "Window o1". */
function nameOf(noun: string, item: unknown, index: number): string {
  if (!isRecord(item)) return `${noun} ${index + 1}`;
  const kind =
    typeof item.kind === 'string' && /^[a-z-]{1,30}$/.test(item.kind) ? item.kind.replaceAll('-', ' ') : noun;
  return typeof item.id === 'string' && item.id !== '' ? `${kind} ${shortId(item.id)}` : `${kind} ${index + 1}`;
}

function shortId(id: string): string {
  return /^[\w.@-]{1,40}$/.test(id) ? id : quoted(id);
}

/** Returns the value at a path; undefined when there is none. */
export function valueAt(value: unknown, path: readonly Step[]): unknown {
  return path.reduce(stepInto, value);
}

function stepInto(value: unknown, step: Step): unknown {
  if (Array.isArray(value)) return value[Number(step)];
  return isRecord(value) && Object.hasOwn(value, step) ? value[step] : undefined;
}

/** Returns a path in words: "shape.box.width", "from[2]". */
function keyWords(path: readonly Step[]): string {
  return path.reduce<string>((words, step) => {
    if (typeof step === 'number') return `${words}[${step}]`;
    return words === '' ? step : `${words}.${step}`;
  }, '');
}
