import { useState } from 'react';
import { useNow } from '../../state/now.ts';
import { t } from '../../words/t.ts';

const SECOND = 1000;

/** How long the talk has taken. */
export function Since() {
  const now = useNow();
  const [began] = useState(now);
  const seconds = Math.trunc((now - began) / SECOND);
  const time = `${Math.trunc(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  return <span className="semi">{t('intake.sinceBegan', { time })}</span>;
}
