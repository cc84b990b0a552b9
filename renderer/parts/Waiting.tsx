import type { ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
  /** Oxide: it waits although something was done already. */
  readonly stop?: boolean;
}

/** Dashed: what waits for a stamp. */
export function Waiting({ children, stop = false }: Props) {
  return <div className={stop ? 'waiting stop' : 'waiting'}>{children}</div>;
}
