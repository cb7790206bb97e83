import { useLayoutEffect, useRef } from 'react';

interface Props {
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** SVG elements as text, of our own drawing. */
  readonly drawing: string;
  /** What it shows, for who hears it; without it the picture is left out there. */
  readonly name?: string;
}

/** A drawing of the papers on the page: the same text that is saved, so that what is seen is what is filed. */
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
