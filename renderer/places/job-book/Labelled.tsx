import type { ReactNode } from 'react';

/** A cell under its words; the cell says them aloud itself. */
export function Labelled({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <div className="book-labelled">
      <span aria-hidden="true">{label}</span>
      {children}
    </div>
  );
}
