import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { t } from '../../words/t.ts';
import type { Order } from '../order.ts';
import { Tried } from '../Tried.tsx';
import { CreditRow } from './CreditRow.tsx';
import type { ChangeDraft, YesDraft } from './draft.ts';
import { HowRow } from './HowRow.tsx';
import type { Quote } from './moved.ts';
import { RuleRow } from './RuleRow.tsx';
import type { Wrongs } from './read-draft.ts';
import type { ReckonedHere } from './reckon-here.ts';
import { UpToRow } from './UpToRow.tsx';
import { WhoRow } from './WhoRow.tsx';

export interface FormProps {
  readonly order: Order;
  readonly quotes: readonly Quote[];
  readonly draft: YesDraft;
  readonly onDraft: ChangeDraft;
  readonly here: ReckonedHere | null;
  /** The ceiling as it stands in its field. */
  readonly upTo: string;
  /** The ceiling read, minor units; null where no job is said yes to or it cannot be read. */
  readonly ceiling: number | null;
  readonly wrongs: Wrongs;
}

/** The form of a yes, its rows in the order of the talk. */
export function YesForm({ onSend, ...props }: FormProps & { readonly onSend: () => void }) {
  const { order, draft, onDraft } = props;
  const core = order.jobs.some((job) => job.lines.some((line) => line.kind === 'core'));
  return (
    <form
      className="yes-form"
      aria-label={t('decision.title')}
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
      }}
    >
      <header className="bench-head">
        <h2>{t('decision.title')}</h2>
        <span className="small">{t('decision.dashed')}</span>
      </header>
      <UpToRow {...props} />
      <WhoRow {...props} />
      <HowRow {...props} />
      <section>
        <h3>{t('decision.words')}</h3>
        <Field
          label={t('decision.wordsLabel')}
          value={draft.words}
          onChange={(words) => onDraft({ words })}
          lines={2}
          said
          maxLength={1000}
        />
      </section>
      <section>
        <h3>{t('decision.oldParts')}</h3>
        <div>
          <Choice
            label={t('decision.oldParts')}
            quiet
            value={draft.oldParts ?? wishOf(order)}
            options={(['show', 'return', 'dispose'] as const).map((value) => ({
              value,
              words: t(`decision.old-${value}`),
            }))}
            onChange={(oldParts) => onDraft({ oldParts })}
          />
          {core ? <p className="small ink-2">{t('decision.oldCore')}</p> : null}
        </div>
      </section>
      <Tried order={order} />
      <CreditRow {...props} />
      <RuleRow {...props} />
    </form>
  );
}

/** What was wished at the door, where something was. */
function wishOf(order: Order) {
  return order.door.oldParts === 'unasked' ? null : order.door.oldParts;
}
