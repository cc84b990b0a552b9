import { t } from '../../../words/t.ts';
import { ZONES, type Zone, zoneBox } from './zones.ts';

const WIDTH = 300;
const HEIGHT = 452;
const BODY =
  'M150 10C92 10 70 34 66 84L64 180C62 232 62 268 64 330C66 400 84 440 150 440C216 440 234 400 236 330C238 268 238 232 236 180L234 84C230 34 208 10 150 10Z';
const WHEELS = 'M66 66H44V118H65M234 66H256V118H235M64 344H42V400H68M236 344H258V400H232';
const GLASS =
  'M84 150C104 136 196 136 216 150L204 202C180 194 120 194 96 202ZM96 306C120 314 180 314 204 306L214 356C190 372 110 372 86 356Z';
const SHAFTS = 'M64 92H118M182 92H236M118 92H182M64 372H130M170 372H236M150 120V352';

/** Our own outline of a car from above. */
function Outline({ stroke }: { readonly stroke: string }) {
  return (
    <g fill="none" stroke={stroke} strokeLinejoin="round" strokeLinecap="round">
      <path d={BODY} strokeWidth="2" />
      <path d={WHEELS} strokeWidth="2" />
      <path d={GLASS} strokeWidth="1.1" />
      <path d={SHAFTS} strokeWidth="1.1" />
      <circle cx="150" cy="372" r="20" strokeWidth="1.1" />
      <circle cx="150" cy="92" r="14" strokeWidth="1.1" />
    </g>
  );
}

interface Props {
  readonly value: Zone | null;
  readonly onChange: (zone: Zone) => void;
}

/** The car from above in nine zones to touch; the one that was touched is inked. */
export function CarZones({ value, onChange }: Props) {
  const box = value === null ? null : zoneBox(value);
  const percent = (part: number, of: number) => `${(part * 100) / of}%`;
  return (
    <fieldset className="car-zones">
      <legend className="aloud">{t('found.where')}</legend>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {box === null ? null : <rect {...box} fill="var(--ink)" />}
        <Outline stroke="var(--ink)" />
        {box === null ? null : (
          <>
            <clipPath id="zone-in-hand">
              <rect {...box} />
            </clipPath>
            <g clipPath="url(#zone-in-hand)">
              <Outline stroke="var(--paper)" />
            </g>
            <circle
              cx={box.x + box.width / 2}
              cy={box.y + box.height / 2}
              r="13"
              fill="var(--heed-fill)"
              stroke="var(--paper)"
              strokeWidth="2.5"
            />
          </>
        )}
        <path
          d="M8 150H292M8 300H292M128 10V440M174 10V440"
          stroke="var(--rule)"
          strokeDasharray="4 4"
          strokeWidth="1.2"
        />
        <text x="150" y="34" textAnchor="middle" fontSize="15" className="zone-front">
          {t('found.front')}
        </text>
      </svg>
      {ZONES.map((zone) => {
        const { x, y, width, height } = zoneBox(zone);
        return (
          <button
            key={zone}
            type="button"
            aria-label={t(`found.zone-${zone}`)}
            aria-pressed={zone === value}
            style={{
              left: percent(x, WIDTH),
              top: percent(y, HEIGHT),
              width: percent(width, WIDTH),
              height: percent(height, HEIGHT),
            }}
            onClick={() => onChange(zone)}
          />
        );
      })}
    </fieldset>
  );
}
