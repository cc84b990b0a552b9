import type { Yes } from './FootBar.tsx';

interface Props {
  readonly yes: Yes & { readonly ceiling: number; readonly onSheet: number };
  readonly coming?: number;
}

/**
 * The drawn bar. Its length is the greatest of the sheet, the yes and a coming yes. Stamp blue: covered and inside.
 * Blue edge: room up to the yes, which has a tick. Oxide hatch: held jobs and what the covered ones are over.
 */
export function YesBar({ yes, coming }: Props) {
  const { ceiling, onSheet } = yes;
  const whole = Math.max(onSheet, ceiling, coming ?? 0, 1);
  const hatch = Math.min(onSheet, (yes.heldSum ?? 0) + (yes.coveredExcess ?? 0));
  // While a yes is being recorded, only the yes so far is solid.
  const solid = Math.max(0, Math.min(onSheet - hatch, coming === undefined ? onSheet : ceiling));
  // What a coming yes reaches is drawn as its dashed length instead.
  const held = Math.max(solid, coming ?? 0);
  const at = (minor: number) => `${(Math.max(0, Math.min(minor, whole)) * 100) / whole}%`;
  const span = (from: number, to: number) => ({ left: at(from), width: at(Math.max(0, to - from)) });
  return (
    <div className="yes-bar" aria-hidden="true">
      <i className="covered" style={span(0, solid)} />
      {ceiling > solid ? <i className="room" style={span(solid, ceiling)} /> : null}
      {hatch > 0 && held < onSheet ? <i className="hatch" style={span(held, onSheet)} /> : null}
      {coming !== undefined && coming > ceiling ? (
        <i className="coming" style={span(Math.max(ceiling, solid), coming)} />
      ) : null}
      {ceiling > 0 ? <i className="reach" style={{ left: at(ceiling) }} /> : null}
      {whole > onSheet && onSheet > 0 ? <i className="sheet-end" style={{ left: at(onSheet) }} /> : null}
    </div>
  );
}
