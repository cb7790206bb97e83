import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Returns a ref for a box and its height as it is laid out, px: it is placed by it. `first` is taken for the first layout. */
export function useBoxHeight<Box extends HTMLElement>(first: number): readonly [RefObject<Box | null>, number] {
  const box = useRef<Box>(null);
  const [height, setHeight] = useState(first);
  // After every render: a refusal or a choice more makes it higher.
  useLayoutEffect(() => {
    const now = box.current?.offsetHeight ?? 0;
    if (now > 0 && now !== height) setHeight(now);
  });
  return [box, height];
}
