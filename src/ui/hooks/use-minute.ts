import { useEffect, useState } from 'react';
import { MINUTE, type Ms } from '../../protocol/timing/clock.ts';

/** The clock, read again every minute: what hangs on it is never more than a minute old. */
export function useMinute(): Ms {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), MINUTE);
    return () => clearInterval(timer);
  }, []);
  return now;
}
