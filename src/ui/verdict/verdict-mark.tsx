import { useId } from 'react';
import type { Tone } from '../../../geometry/messages/index.ts';

/**
 * The verdict as a mark without color, in the symbols of the sheet: white is allowed, hatching is excluded. Clear: a white disc with its
 * axis. Clear of what is drawn: the same with an open rim. Tight: a double rim. Blocked: hatched. Unknown: a broken rim.
 */
export function VerdictMark({ verdict, size = 20 }: { readonly verdict: Tone; readonly size?: number }) {
  const hatch = useId();
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 20 20"
      aria-hidden="true"
      className="mark"
      fill="none"
      stroke="currentColor"
    >
      {verdict === 'blocked' && (
        <>
          <defs>
            <pattern id={hatch} width="3.6" height="3.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line x1="0" y1="0" x2="0" y2="3.6" strokeWidth="2.6" />
            </pattern>
          </defs>
          <circle cx="10" cy="10" r="8.5" strokeWidth="2" fill={`url(#${hatch})`} />
        </>
      )}
      {verdict === 'clear' && (
        <>
          <circle cx="10" cy="10" r="8.5" strokeWidth="2" />
          <circle cx="10" cy="10" r="1.8" fill="currentColor" stroke="none" />
        </>
      )}
      {verdict === 'clear-of-drawn' && (
        <>
          <path d="M18.5 10A8.5 8.5 0 1 1 10 1.5" strokeWidth="2" />
          <circle cx="10" cy="10" r="1.8" fill="currentColor" stroke="none" />
        </>
      )}
      {verdict === 'tight' && (
        <>
          <circle cx="10" cy="10" r="8.6" strokeWidth="1.6" />
          <circle cx="10" cy="10" r="5.2" strokeWidth="1.6" />
        </>
      )}
      {verdict === 'unknown' && <circle cx="10" cy="10" r="8.5" strokeWidth="2" strokeDasharray="3.2 3.475" />}
    </svg>
  );
}
