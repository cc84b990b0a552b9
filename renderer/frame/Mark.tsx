const TEETH = 18;

/** The mark: a small crown wheel. */
export function Mark() {
  return (
    <svg viewBox="0 0 26 26" fill="none" stroke="currentColor" strokeWidth="2" aria-hidden="true">
      <circle cx="13" cy="13" r="8.5" />
      <circle cx="13" cy="13" r="4.16" />
      {Array.from({ length: TEETH }, (_, i) => {
        const at = (i * 2 * Math.PI) / TEETH;
        const lean = at + 0.13;
        const [x1, y1] = [13 + 9.4 * Math.cos(at), 13 + 9.4 * Math.sin(at)];
        return <path key={at} d={`M${x1} ${y1}L${13 + 12.2 * Math.cos(lean)} ${13 + 12.2 * Math.sin(lean)}`} />;
      })}
    </svg>
  );
}
