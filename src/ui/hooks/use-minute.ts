import { useEffect, useState } from 'react';
import { MINUTE, type Ms } from '../../protocol/timing/clock.ts';

/** Returns the start of the current minute, ms since 1970: an instant recorded by "Now" is never later. Renders again every minute. */
export function useMinute(): Ms {
  const [, setMinutes] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setMinutes((count) => count + 1), MINUTE);
    return () => clearInterval(timer);
  }, []);
  return Math.floor(Date.now() / MINUTE) * MINUTE;
}
