import { type ComponentType, createElement, useEffect, useState } from 'react';
import { PART_MISSING } from '../../platform/part-missing.ts';
import './later.css';

/** The code of one part: what it is once it is there, and how to get it. */
interface Source<Props> {
  part: ComponentType<Props> | null;
  readonly fetch: () => Promise<void>;
}

/** Parts that are not loaded yet. */
const waiting = new Set<() => Promise<void>>();

/**
 * A part of the page whose code is only loaded when it is first shown, or in a quiet moment after the start. Loaded, it shows at once
 * and in the same frame. Where it cannot be loaded it says so in its place, with a button that tries again.
 */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const source = sourceOf(load);
  waiting.add(source.fetch);
  return (props) => <Part source={source} given={props} />;
}

/** The same for a part that belongs to the first picture: loaded at once, beside whatever else the start does. */
export function preloaded<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const source = sourceOf(load);
  // Where it cannot be had, it is asked for again when it is shown.
  source.fetch().catch(() => undefined);
  return (props) => <Part source={source} given={props} />;
}

function sourceOf<Props>(load: () => Promise<ComponentType<Props>>): Source<Props> {
  const source: Source<Props> = {
    part: null,
    fetch: async () => {
      source.part = await load();
      waiting.delete(source.fetch);
    },
  };
  return source;
}

interface PartProps<Props> {
  readonly source: Source<Props>;
  readonly given: Props;
}

function Part<Props extends object>({ source, given }: PartProps<Props>) {
  const [state, setState] = useState<'coming' | 'there' | 'missing'>('coming');
  useEffect(() => {
    if (state !== 'coming' || source.part) return;
    let gone = false;
    source.fetch().then(
      () => gone || setState('there'),
      () => gone || setState('missing'),
    );
    return () => {
      gone = true;
    };
  }, [state, source]);
  if (source.part) return createElement(source.part, given);
  return state === 'missing' ? <Missing again={() => setState('coming')} /> : <Coming />;
}

/** Loads one part after the other in idle moments. A part that cannot be loaded now is requested again when it is shown. */
export async function loadTheRest(): Promise<void> {
  for (const fetch of [...waiting]) {
    await quietMoment();
    await fetch().catch(() => undefined);
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
