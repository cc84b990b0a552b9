import { useEffect, useState } from 'react';
import { useSaved } from '../state/saved.ts';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import { timeText } from '../words/times.ts';

const SHOWN_MS = 2000;

/** "saved 10:42", for two seconds after something of this window was saved. */
export function Saved() {
  const writing = useWriting();
  const at = useSaved((state) => state.at);
  const [seen, setSeen] = useState(at);
  useEffect(() => {
    const timer = setTimeout(() => setSeen(at), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [at]);
  return (
    <span className="saved" role="status">
      {at === null || at === seen ? '' : t('parts.saved', { time: timeText(at, writing) })}
    </span>
  );
}
