import { t } from '../words/t.ts';

/** Hairline rows at true height; still, since data is local and this is rare. */
export function Loading({ rows }: { readonly rows: number }) {
  return (
    <div className="loading" role="status" aria-label={t('frame.loading')}>
      {Array.from({ length: rows }, (_, i) => `row ${i}`).map((row) => (
        <i key={row} />
      ))}
    </div>
  );
}
