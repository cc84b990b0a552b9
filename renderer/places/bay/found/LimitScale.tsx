import { useWriting } from '../../../state/shop.ts';
import { quantityText } from '../../../words/figures.ts';
import { t } from '../../../words/t.ts';
import { beyond, type Measuring, scaleEnd } from './limit.ts';

const LENGTH = 400;

/** The value against its limit on one scale; what lies beyond is hatched. */
export function LimitScale({ measuring }: { readonly measuring: Measuring }) {
  const writing = useWriting();
  const { value, limit, side, unit } = measuring;
  const over = beyond(measuring);
  if (value === null || limit === null || over === null) return null;
  const end = scaleEnd(value, limit);
  const at = (figure: number) => (Math.max(0, Math.min(end, figure)) * LENGTH) / end;
  const text = (figure: number) => quantityText(figure, '', writing);
  const inked = over === 0 || side === 'least' ? value : limit;
  const said =
    over === 0
      ? t('found.inside')
      : t(side === 'most' ? 'found.over' : 'found.under', { by: quantityText(over, unit, writing) });
  return (
    <svg
      className="limit-scale"
      viewBox="-4 0 428 74"
      role="img"
      aria-label={`${t('found.limit', { limit: text(limit) })}, ${said}`}
    >
      <defs>
        <pattern id="beyond" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" x2="0" y1="0" y2="8" stroke="var(--stop)" strokeWidth="3" />
        </pattern>
      </defs>
      <rect x="0" y="22" width={at(inked)} height="22" fill="var(--ink)" />
      {over === 0 ? null : (
        <rect x={at(inked)} y="22" width={at(over)} height="22" fill="url(#beyond)" stroke="var(--stop)" />
      )}
      <path d={`M0 44H${LENGTH}`} stroke="var(--ink)" strokeWidth="1.5" />
      {[0, 1, 2, 3, 4].map((quarter) => {
        const figure = Math.round((end * quarter) / 4);
        return (
          <g key={quarter}>
            <path d={`M${at(figure)} 44v7`} stroke="var(--ink)" />
            <text x={at(figure)} y="68" textAnchor={quarter === 4 ? 'end' : 'middle'} fontSize="15">
              {quarter === 4 ? quantityText(figure, unit, writing) : text(figure)}
            </text>
          </g>
        );
      })}
      <path d={`M${at(limit)} 10V50`} stroke="var(--ink)" strokeWidth="3" />
      <text
        x={at(limit) + (at(limit) > LENGTH / 2 ? -7 : 7)}
        y="16"
        textAnchor={at(limit) > LENGTH / 2 ? 'end' : 'start'}
        fontSize="15"
        fontWeight="700"
      >
        {t('found.limit', { limit: text(limit) })}
      </text>
      <text
        x={Math.min(at(inked) + at(over) + 8, LENGTH - 70)}
        y="40"
        fontSize="18"
        fontWeight="700"
        className={over === 0 ? '' : 'stop-words'}
      >
        {over === 0 && at(inked) > LENGTH - 80 ? '' : said}
      </text>
    </svg>
  );
}
