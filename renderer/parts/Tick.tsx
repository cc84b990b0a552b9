import type { ReactNode } from 'react';

interface Props {
  readonly ticked: boolean;
  readonly onTick: (ticked: boolean) => void;
  /** Beside the box. */
  readonly children?: ReactNode;
  /** Said aloud where nothing stands beside the box. */
  readonly label?: string;
  readonly disabled?: boolean;
}

/** A drawn box to tick. */
export function Tick({ ticked, onTick, children, label, disabled = false }: Props) {
  return (
    <label className="tick">
      <input
        type="checkbox"
        className="tick-box"
        checked={ticked}
        disabled={disabled}
        aria-label={label}
        onChange={(event) => onTick(event.target.checked)}
      />
      {children === undefined ? null : <span>{children}</span>}
    </label>
  );
}
