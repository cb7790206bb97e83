/** Made when the element is so far outside the page or nearer, px. */
const AHEAD = '200px';

/** One at a time, with a pause for input between two. */
let making: Promise<unknown> = Promise.resolve();

/**
 * Makes something once an element has come into view, and shows it. An element that has left the view before its turn is passed over until it is
 * back; what is being made is shown wherever the element is by then.
 * @param make resolves to null where it cannot be made; a rejection counts as null.
 * @returns stops it: nothing is shown afterwards.
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
      // The browser hands over several crossings at once, oldest first.
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
