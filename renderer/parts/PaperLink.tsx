import type { ReactNode } from 'react';
import { openPaper } from '../state/transport.ts';

/** An issued paper, opened in a reader of its own. */
export function PaperLink({ paperId, children }: { readonly paperId: string; readonly children: ReactNode }) {
  return (
    <button type="button" className="link" onClick={() => openPaper(paperId)}>
      {children}
    </button>
  );
}
