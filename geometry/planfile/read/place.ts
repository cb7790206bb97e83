import type { Step } from '../pointer.ts';
import { quoted } from '../problem.ts';
import { isRecord } from '../schema/walk.ts';

/** A place of the file in words: the thing, and the key inside it (empty for the thing itself). */
export interface Place {
  readonly thing: string;
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
  custody: 'handing over',
  weather: 'note on the weather',
  earlier: 'earlier result',
  quality: 'blank or spike',
};

/**
 * Names the innermost thing on a path by its kind and id ("Wall w3 on level L1"), or by its number, counted from 1, where
 * the id is missing ("Reading 2"). The value need not be valid.
 */
export function placeOf(value: unknown, path: readonly Step[]): Place {
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
  const thing = names.join(' on ') || 'The plan';
  return { thing: thing.charAt(0).toUpperCase() + thing.slice(1), key: keyWords(key) };
}

/** "Window o1": a thing of the file by its kind and id. */
function nameOf(noun: string, thing: unknown, index: number): string {
  if (!isRecord(thing)) return `${noun} ${index + 1}`;
  const kind =
    typeof thing.kind === 'string' && /^[a-z-]{1,30}$/.test(thing.kind) ? thing.kind.replaceAll('-', ' ') : noun;
  return typeof thing.id === 'string' && thing.id !== '' ? `${kind} ${shortId(thing.id)}` : `${kind} ${index + 1}`;
}

function shortId(id: string): string {
  return /^[\w.@-]{1,40}$/.test(id) ? id : quoted(id);
}

/** What stands at a place; undefined where nothing does. */
export function valueAt(value: unknown, path: readonly Step[]): unknown {
  return path.reduce(stepInto, value);
}

function stepInto(value: unknown, step: Step): unknown {
  if (Array.isArray(value)) return value[Number(step)];
  return isRecord(value) && Object.hasOwn(value, step) ? value[step] : undefined;
}

/** "shape.box.width", "from, item 2". */
function keyWords(path: readonly Step[]): string {
  return path.reduce<string>((words, step) => {
    if (typeof step === 'number') return `${words}[${step}]`;
    return words === '' ? step : `${words}.${step}`;
  }, '');
}
