import { useCallback, useEffect, useRef, useState } from 'react';
import { type OrderFilter, OrderWeek, type Week } from './OrderWeek.tsx';
import { useNear } from './use-near.ts';

interface Props {
  readonly filter: OrderFilter;
  readonly weeks: readonly Week[];
}

/** How high a row is, in rem: what is not in view keeps its room by it. */
const ROW = 2.25;

/** All weeks of the list; only those in view and beside it are made, the others keep their room. */
export function OrderWeeks({ filter, weeks }: Props) {
  const list = useRef<HTMLDivElement>(null);
  const near = useNear(list, weeks);
  return (
    <div ref={list} className="order-weeks">
      {weeks.map((week) => (
        <Block key={week.from} filter={filter} week={week} shown={near.has(week.from)} />
      ))}
    </div>
  );
}

interface BlockProps {
  readonly filter: OrderFilter;
  readonly week: Week;
  readonly shown: boolean;
}

/** A week that is made, or its room: as high as it was when it was last seen, else by its count. */
function Block({ filter, week, shown }: BlockProps) {
  const block = useRef<HTMLDivElement>(null);
  const [height, setHeight] = useState<number | null>(null);
  const [made, setMade] = useState(false);
  const onMade = useCallback(() => setMade(true), []);
  useEffect(() => {
    const element = block.current;
    if (!made || !shown || element === null) return;
    const watch = new ResizeObserver(() => setHeight(element.offsetHeight));
    watch.observe(element);
    return () => {
      watch.disconnect();
      setMade(false);
    };
  }, [made, shown]);
  const stands = made && shown;
  return (
    <div ref={block} data-week={week.from} style={stands ? undefined : { height: height ?? `${week.n * ROW}rem` }}>
      {shown ? <OrderWeek filter={filter} week={week} onMade={onMade} /> : null}
    </div>
  );
}
