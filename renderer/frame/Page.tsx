import type { ReactNode } from 'react';

interface Props {
  readonly title: ReactNode;
  /** One sentence beside the title. */
  readonly words?: ReactNode;
  /** Buttons at the right. */
  readonly actions?: ReactNode;
  /** What stands under the paper and does not scroll: a FootBar. */
  readonly foot?: ReactNode;
  readonly children: ReactNode;
}

/** A place that is one page of paper; it scrolls, its foot stays. */
export function Page({ title, words, actions, foot, children }: Props) {
  return (
    <>
      <div className="page">
        <div className="page-head">
          <h1>{title}</h1>
          {words === undefined ? null : <p>{words}</p>}
          {actions === undefined ? null : <div className="page-actions">{actions}</div>}
        </div>
        {children}
      </div>
      {foot}
    </>
  );
}
