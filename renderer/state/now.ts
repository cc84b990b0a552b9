import { useEffect, useState } from 'react';

/** The time, told again every `step` milliseconds (running clocks need seconds, the top line minutes). */
export function useNow(step = 1000): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), step);
    return () => clearInterval(timer);
  }, [step]);
  return now;
}
