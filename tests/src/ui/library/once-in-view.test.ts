import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { onceInView } from '../../../../src/ui/library/once-in-view.ts';

type Crossing = Pick<IntersectionObserverEntry, 'isIntersecting'>;

/** Stands in for the browser's observer: the test tells it what crosses the view. */
class Observer {
  static all: Observer[] = [];
  isOn = false;
  readonly #tell: (entries: readonly Crossing[]) => void;
  constructor(tell: (entries: readonly Crossing[]) => void) {
    this.#tell = tell;
    Observer.all.push(this);
  }
  observe() {
    this.isOn = true;
  }
  disconnect() {
    this.isOn = false;
  }
  cross(...isIntersecting: boolean[]) {
    if (this.isOn) this.#tell(isIntersecting.map((each) => ({ isIntersecting: each })));
  }
}

/** A promise that the test settles. */
function later<Made>() {
  let settle: (made: Made) => void = () => undefined;
  const promise = new Promise<Made>((done) => {
    settle = done;
  });
  return { promise, settle };
}

/** Every pause that was begun ends, and what follows from it: then nothing is left to come by itself. */
const turn = () => vi.runAllTimersAsync();

const ELEMENT = {} as Element;

function watch(make: () => Promise<string | null>) {
  const shown: (string | null)[] = [];
  const stop = onceInView(ELEMENT, make, (made) => shown.push(made));
  const observer = Observer.all.at(-1);
  if (!observer) throw new Error('Nothing observes the element.');
  return { shown, stop, observer };
}

describe('what is made once an element comes into view', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal('IntersectionObserver', Observer);
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('is made and shown once, however often the element comes back', async () => {
    const make = vi.fn(async () => 'picture');
    const { shown, observer } = watch(make);
    observer.cross(false);
    await turn();
    expect(make).not.toHaveBeenCalled();
    observer.cross(true);
    observer.cross(false);
    observer.cross(true);
    await turn();
    expect(make).toHaveBeenCalledTimes(1);
    expect(shown).toEqual(['picture']);
  });

  it('is shown though the element has left the view while it was made', async () => {
    const { promise, settle } = later<string>();
    const { shown, observer } = watch(() => promise);
    observer.cross(true);
    await turn();
    observer.cross(false);
    settle('picture');
    await turn();
    expect(shown).toEqual(['picture']);
  });

  it('goes by the newest of several crossings that come together', async () => {
    const { shown, observer } = watch(async () => 'picture');
    observer.cross(false, true);
    await turn();
    expect(shown).toEqual(['picture']);
  });

  it('waits while the element is out of view at its turn, and comes when it is back', async () => {
    const { shown, observer } = watch(async () => 'picture');
    observer.cross(true);
    observer.cross(false);
    await turn();
    expect(shown).toEqual([]);
    observer.cross(true);
    await turn();
    expect(shown).toEqual(['picture']);
  });

  it('shows null where it cannot be made, and the next one is made all the same', async () => {
    const broken = watch(() => Promise.reject(new Error('no such file')));
    const next = watch(async () => 'picture');
    broken.observer.cross(true);
    next.observer.cross(true);
    await turn();
    expect(broken.shown).toEqual([null]);
    expect(next.shown).toEqual(['picture']);
  });

  it('shows nothing after it was stopped', async () => {
    const { promise, settle } = later<string>();
    const { shown, stop, observer } = watch(() => promise);
    observer.cross(true);
    await turn();
    stop();
    settle('picture');
    await turn();
    expect(shown).toEqual([]);
    expect(observer.isOn).toBe(false);
  });
});
