import { t } from '../words/t.ts';

interface Props {
  /** stop: double oxide rule; heed: brass hatch; hold: heavy box. */
  readonly kind: 'stop' | 'heed' | 'hold';
  readonly children: string;
}

/** A word with a drawn mark: never colour alone. */
export function WordMark({ kind, children }: Props) {
  return <span className={`word-mark ${kind}`}>{children}</span>;
}

export const LateMark = () => <WordMark kind="stop">{t('parts.late')}</WordMark>;
export const SoonMark = () => <WordMark kind="heed">{t('parts.soon')}</WordMark>;
