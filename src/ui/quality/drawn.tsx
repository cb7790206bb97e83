import { useLayoutEffect, useRef } from 'react';

interface Props {
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** SVG elements as text, made by the app only. */
  readonly drawing: string;
  /** Its accessible name; without one it is hidden from screen readers. */
  readonly name?: string;
}

/** A drawing of a document on the page, from the same SVG that is saved. */
export function Drawn({ width, height, drawing, name }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    const text = `<svg xmlns="http://www.w3.org/2000/svg">${drawing}</svg>`;
    const read = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    svg.current?.replaceChildren(...read.childNodes);
  }, [drawing]);
  const more = name ? { role: 'img', 'aria-label': name } : { 'aria-hidden': true };
  return <svg ref={svg} className="drawn" viewBox={`0 0 ${width} ${height}`} {...more} />;
}
