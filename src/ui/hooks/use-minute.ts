import { useEffect, useState } from 'react';
import { MINUTE, type Ms } from '../../protocol/timing/clock.ts';

/** Returns the minute that it is at each render, ms: what was recorded as "now" never lies ahead of it. Renders again every minute. */
export function useMinute(): Ms {
  const [, setMinutes] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setMinutes((count) => count + 1), MINUTE);
    return () => clearInterval(timer);
  }, []);
  return Math.floor(Date.now() / MINUTE) * MINUTE;
}
