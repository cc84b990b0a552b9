import type { ReactNode } from 'react';
import { t } from '../words/t.ts';

/** The triangle with what can hurt. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <div className="caution">
      <svg width="30" height="27" viewBox="0 0 30 27" role="img" aria-label={t('parts.caution')}>
        <path
          d="M15 2L28.5 25.5H1.5Z"
          fill="var(--heed-fill)"
          stroke="var(--ink)"
          strokeWidth="1.6"
          strokeLinejoin="round"
        />
        <path d="M15 10v7.5" stroke="var(--on-heed)" strokeWidth="2.6" />
        <circle cx="15" cy="21.3" r="1.6" fill="var(--on-heed)" />
      </svg>
      <p>{children}</p>
    </div>
  );
}
