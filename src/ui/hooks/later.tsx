import { type ComponentType, createElement, useEffect, useSyncExternalStore } from 'react';
import { firstPicture } from '../../platform/first-picture.ts';
import { PART_MISSING } from '../../platform/part-missing.ts';
import { PartSource } from './part-source.ts';
import './later.css';

/** Sources of parts that are not loaded yet. */
const waiting = new Set<{ readonly request: () => Promise<void> }>();

/**
 * Returns a component whose code is loaded when it is first shown, but not before the first picture, or in an idle moment after the start.
 * Once loaded, it is rendered in the same frame. If it cannot be loaded, a message with a button that tries again is shown in its place.
 * @param quiet whether nothing is shown in its place, neither while it loads nor if it cannot be loaded
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  quiet = false,
): ComponentType<Props> {
  const source = new PartSource(load);
  waiting.add(source);
  return (props) => <Part source={source} given={props} quiet={quiet} />;
}

/** Returns such a component for a part of the first picture: loaded at once, in parallel with the rest of the start. */
export function preloaded<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const source = new PartSource(load);
  void source.request();
  return (props) => <Part source={source} given={props} />;
}

interface PartProps<Props> {
  readonly source: PartSource<ComponentType<Props>>;
  readonly given: Props;
  readonly quiet?: boolean;
}

function Part<Props extends object>({ source, given, quiet }: PartProps<Props>) {
  // This hook reads the part again after subscribing: the code may arrive between the first render and its effects.
  const part = useSyncExternalStore(source.subscribe, () => source.part);
  const isMissing = useSyncExternalStore(source.subscribe, () => source.isMissing);
  useEffect(() => void firstPicture().then(() => source.request()), [source]);
  if (part) return createElement(part, given);
  return quiet ? null : <NotLoaded isMissing={isMissing} again={() => void source.request()} />;
}

let rest = Promise.resolve();

/** Loads the parts one after another in idle moments. A part that fails to load is requested again when it is shown. */
export function loadTheRest(): void {
  rest = loadWaiting();
}

/** Resolves when no part is being loaded in idle moments; at once if that has not started. */
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
    // Not every browser has `requestIdleCallback`.
    if ('requestIdleCallback' in window) requestIdleCallback(() => done(), { timeout: 2000 });
    else setTimeout(done, 200);
  });

/** Stands in the place of a part that is not loaded, or could not be. */
export function NotLoaded({ isMissing, again }: { readonly isMissing: boolean; readonly again: () => void }) {
  return isMissing ? <Missing again={again} /> : <Coming />;
}

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
