import { useEffect, useState } from 'react';
import { MINUTE, type Ms } from '../../protocol/timing/clock.ts';

/** Returns the time, updated every minute, ms. */
export function useMinute(): Ms {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), MINUTE);
    return () => clearInterval(timer);
  }, []);
  return now;
}
