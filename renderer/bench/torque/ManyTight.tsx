import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { holdUnread } from '../../parts/unread.ts';
import { t } from '../../words/t.ts';
import { EarlierTime, useEarlier } from '../EarlierTime.tsx';

interface Props {
  readonly left: number;
  readonly inRound: number;
  readonly onMany: (count: number, when: { at?: number }) => void;
}

/** For whoever tightens first and taps after: the rest of the round, or all that are left, at once. */
export function ManyTight({ left, inRound, onMany }: Props) {
  const [open, setOpen] = useState(false);
  const [time, setTime] = useState<string | null>(null);
  const earlier = useEarlier();
  if (!open) return <Button onClick={() => setOpen(true)}>{t('bench.many')}</Button>;
  const go = (count: number) => {
    if (holdUnread()) return;
    setOpen(false);
    onMany(count, earlier(time));
  };
  return (
    <div className="torque-many">
      <p className="small">{t('bench.manyHonest')}</p>
      <EarlierTime value={time} onChange={setTime} />
      {inRound < 2 ? null : <Button onClick={() => go(inRound)}>{t('bench.manyRound', { n: inRound })}</Button>}
      {left === inRound ? null : <Button onClick={() => go(left)}>{t('bench.manyAll', { n: left })}</Button>}
      <Button onClick={() => setOpen(false)}>{t('bench.oneByOne')}</Button>
    </div>
  );
}
