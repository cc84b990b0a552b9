import { t } from '../../words/t.ts';
import type { TorqueStep } from './bolt-places.ts';
import { bothUnitWords, stageWords } from './stage-words.ts';

/** Where the figures are from, and what follows from them: settings with the extension, an estimate of the clamp load. */
export function Reckoning({ data }: { readonly data: TorqueStep }) {
  const { extension, thread } = data.group;
  const kilonewtons = (figure: number) => figure.toFixed(figure < 10 ? 1 : 0);
  return (
    <details className="reckoner">
      <summary>{t('bench.figuresFrom', { source: data.source === '' ? t('bench.noSource') : data.source })}</summary>
      {extension === null ? null : (
        <p className="small">{t('bench.settingRule', { length: extension.length, angle: extension.angle })}</p>
      )}
      <ul className="small">
        {data.stages.map((stage, round) => (
          <li key={stageWords(stage).join(' ')}>
            {t('bench.roundOf', { round: round + 1, n: data.stages.length + (data.group.checkRound ? 1 : 0) })}:{' '}
            {stageWords(stage).filter(Boolean).join(', ')}
            {stage.setting === null
              ? ''
              : `; ${t('bench.setWrench', { figures: bothUnitWords(stage.setting, null).join(', ') })}`}
            {stage.clampLoad === null
              ? ''
              : `; ${t('bench.clampLoad', {
                  load: kilonewtons(stage.clampLoad.load),
                  least: kilonewtons(stage.clampLoad.least),
                  most: kilonewtons(stage.clampLoad.most),
                })}`}
          </li>
        ))}
      </ul>
      {thread === null ? null : <p className="small">{t('bench.clampRule')}</p>}
      <p className="small semi">{t('bench.manualFirst')}</p>
    </details>
  );
}
