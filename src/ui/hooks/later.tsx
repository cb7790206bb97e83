import { type ComponentType, createElement, useEffect, useSyncExternalStore } from 'react';
import { PART_MISSING } from '../../platform/part-missing.ts';
import { PartSource } from './part-source.ts';
import './later.css';

/** Sources of parts that are not loaded yet. */
const waiting = new Set<{ readonly request: () => Promise<void> }>();

/**
 * A part of the page whose code is only loaded when it is first shown, or in a quiet moment after the start. Loaded, it shows at once
 * and in the same frame. Where it cannot be loaded it says so in its place, with a button that tries again.
 * @param quiet nothing stands in its place until it is there
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  quiet = false,
): ComponentType<Props> {
  const source = new PartSource(load);
  waiting.add(source);
  return (props) => <Part source={source} given={props} quiet={quiet} />;
}

/** The same for a part that belongs to the first picture: loaded at once, beside whatever else the start does. */
export function preloaded<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const source = new PartSource(load);
  void source.request();
  return (props) => <Part source={source} given={props} />;
}

interface PartProps<Props> {
  readonly source: PartSource<Props>;
  readonly given: Props;
  readonly quiet?: boolean;
}

function Part<Props extends object>({ source, given, quiet }: PartProps<Props>) {
  // Asked again after subscribing: the code may come between the first picture of the page and its effects.
  const part = useSyncExternalStore(source.subscribe, () => source.part);
  const isMissing = useSyncExternalStore(source.subscribe, () => source.isMissing);
  useEffect(() => void source.request(), [source]);
  if (part) return createElement(part, given);
  if (quiet) return null;
  return isMissing ? <Missing again={() => void source.request()} /> : <Coming />;
}

let rest = Promise.resolve();

/** Loads one part after the other in idle moments. A part that cannot be loaded now is requested again when it is shown. */
export function loadTheRest(): void {
  rest = loadWaiting();
}

/** Resolves when no part is being loaded in idle moments any more. */
export const restLoaded = (): Promise<void> => rest;

async function loadWaiting(): Promise<void> {
  for (const source of [...waiting]) {
    waiting.delete(source);
    await quietMoment();
    await source.request();
  }
}

const quietMoment = () =>
  new Promise<void>((done) => {
    // Not in every browser.
    if ('requestIdleCallback' in window) requestIdleCallback(() => done(), { timeout: 2000 });
    else setTimeout(done, 200);
  });

function Coming() {
  return (
    <p className="later soft" role="status">
      One moment…
    </p>
  );
}

function Missing({ again }: { readonly again: () => void }) {
  return (
    <p className="later later--missing" role="alert">
      {PART_MISSING}{' '}
      <button type="button" className="text-button" onClick={again}>
        Try again
      </button>
    </p>
  );
}
