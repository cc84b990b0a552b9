import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { useSession } from '../../state/session.ts';
import { useShop } from '../../state/shop.ts';
import { t } from '../../words/t.ts';

export interface Second {
  readonly personId: string;
  readonly code: string;
}

interface Props {
  readonly value: Second;
  readonly onChange: (second: Second) => void;
}

/** Another person than the one at the window, who says so with a code of their own. The code is never kept here. */
export function SecondSigns({ value, onChange }: Props) {
  const me = useSession((session) => session.person?.personId);
  const others = (useShop()?.people ?? []).filter((person) => person.active && person.id !== me);
  return (
    <div className="second-signs">
      <Choice
        label={t('bench.second')}
        value={value.personId === '' ? null : value.personId}
        options={others.map((person) => ({ value: person.id, words: person.name }))}
        onChange={(personId) => onChange({ personId, code: '' })}
      />
      {value.personId === '' ? null : (
        <Field
          label={t('bench.secondCode')}
          type="password"
          value={value.code}
          onChange={(code) => onChange({ ...value, code })}
        />
      )}
    </div>
  );
}
