import type { ReactNode } from 'react';

/** Nothing here yet: one sentence and the main action, where the first thing will stand. */
export function Empty({ children, action }: { readonly children: ReactNode; readonly action?: ReactNode }) {
  return (
    <div className="empty">
      <span>{children}</span>
      {action}
    </div>
  );
}
