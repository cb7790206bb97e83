/** Distance outside the viewport within which an element counts as in view. */
const AHEAD = '200px';

/** The end of the queue: one item is made at a time, with a pause for input between two. */
let making: Promise<unknown> = Promise.resolve();

/**
 * Calls `make` once an element is in view, and `show` with the result. An element that leaves the view before its turn is skipped until it
 * is back. A result is shown even if the element has left the view meanwhile.
 * @param make resolves to null if it fails; a rejection counts as null.
 * @returns the function that stops it: `show` is not called afterwards.
 */
export function onceInView<Made>(
  element: Element,
  make: () => Promise<Made | null>,
  show: (made: Made | null) => void,
): () => void {
  let isInView = false;
  let isStarted = false;
  let isStopped = false;
  const makeInTurn = async () => {
    if (!isInView || isStarted || isStopped) return;
    isStarted = true;
    observer.disconnect();
    const made = await make().catch(() => null);
    if (!isStopped) show(made);
  };
  const observer = new IntersectionObserver(
    (entries) => {
      // The browser may report several crossings at once, oldest first.
      isInView = entries.at(-1)?.isIntersecting ?? false;
      if (isInView) making = making.then(pause).then(makeInTurn);
    },
    { rootMargin: AHEAD },
  );
  observer.observe(element);
  return () => {
    isStopped = true;
    observer.disconnect();
  };
}

function pause(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}
