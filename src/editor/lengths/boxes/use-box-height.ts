import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Returns a ref for a box and the height of its layout, px, which its place depends on; `first` until it is laid out. */
export function useBoxHeight<Box extends HTMLElement>(first: number): readonly [RefObject<Box | null>, number] {
  const box = useRef<Box>(null);
  const [height, setHeight] = useState(first);
  // After every render, since a refusal or another choice makes the box higher.
  useLayoutEffect(() => {
    const now = box.current?.offsetHeight ?? 0;
    if (now > 0 && now !== height) setHeight(now);
  });
  return [box, height];
}
