import { useRef, useState } from 'react';
import { t } from '../words/t.ts';
import { Button } from './Button.tsx';
import { Tick } from './Tick.tsx';

/** Polylines of x, y in thousandths of the pad's width and height: JSON as it is stored. */
export type Strokes = [number, number][][];

interface Props {
  /** Who signs for what: stands under the line. */
  readonly words: string;
  readonly strokes: Strokes | null;
  readonly onChange: (strokes: Strokes | null) => void;
  /** Signed on paper instead: the way without a pointer. */
  readonly onPaper: boolean;
  readonly setOnPaper: (onPaper: boolean) => void;
}

/** A pad to sign on; whoever cannot draw here signs on paper, and that is ticked. */
export function SignaturePad({ words, strokes, onChange, onPaper, setOnPaper }: Props) {
  const [drawing, setDrawing] = useState<[number, number][] | null>(null);
  const pad = useRef<HTMLDivElement>(null);

  const point = (event: React.PointerEvent): [number, number] => {
    const box = pad.current?.getBoundingClientRect();
    const part = (at: number, from: number, size: number) =>
      Math.round(Math.min(1, Math.max(0, (at - from) / size)) * 1000);
    return box ? [part(event.clientX, box.left, box.width), part(event.clientY, box.top, box.height)] : [0, 0];
  };
  const end = () => {
    if (drawing && drawing.length > 1) onChange([...(strokes ?? []), drawing]);
    setDrawing(null);
  };

  return (
    <div className="signature">
      <div
        ref={pad}
        className="signature-pad"
        aria-hidden={onPaper}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setOnPaper(false);
          setDrawing([point(event)]);
        }}
        onPointerMove={(event) => setDrawing((line) => (line && line.length < 2000 ? [...line, point(event)] : line))}
        onPointerUp={end}
        onPointerCancel={end}
      >
        <SignatureLines
          strokes={[...(strokes ?? []), ...(drawing ? [drawing] : [])]}
          label={strokes ? t('parts.signed') : t('parts.signHere')}
        />
        <span>{words}</span>
      </div>
      <div className="signature-ways">
        <Tick
          ticked={onPaper}
          onTick={(ticked) => {
            setOnPaper(ticked);
            if (ticked) onChange(null);
          }}
        >
          {t('parts.signedOnPaper')}
        </Tick>
        {strokes ? (
          <Button small onClick={() => onChange(null)}>
            {t('parts.signAgain')}
          </Button>
        ) : null}
      </div>
    </div>
  );
}

/** Stored strokes drawn again. */
function SignatureLines({ strokes, label }: { readonly strokes: Strokes; readonly label: string }) {
  return (
    <svg viewBox="0 0 1000 1000" preserveAspectRatio="none" role="img" aria-label={label}>
      {strokes.map((line) => (
        <polyline key={line.join(' ')} points={line.join(' ')} vectorEffect="non-scaling-stroke" />
      ))}
    </svg>
  );
}
