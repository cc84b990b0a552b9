import { WordMark } from '../../parts/WordMark.tsx';
import { t } from '../../words/t.ts';

/** Names a rule that touches law, and says so where nobody has looked it up. `rule` null: the shop has none. */
export function RuleHeading({
  name,
  rule,
}: {
  readonly name: string;
  readonly rule: { readonly checkedOn: string | null } | null;
}) {
  return (
    <h3>
      {name} {rule !== null && rule.checkedOn === null ? <WordMark kind="heed">{t('shop.notChecked')}</WordMark> : null}
    </h3>
  );
}
