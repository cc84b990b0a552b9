import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Order } from '../order.ts';
import { speakerOf } from './read-draft.ts';
import { type Speaker, speakersOf } from './speakers.ts';
import type { FormProps } from './YesForm.tsx';

/** Who spoke. Whoever is allowed less than the sum stands dashed, with why. */
export function WhoRow({ order, draft, onDraft, ceiling, wrongs }: FormProps) {
  const writing = useWriting();
  const speakers = speakersOf(order);
  const speaker = speakerOf(order, draft);
  const beyond = (one: Speaker) => one.limit !== null && ceiling !== null && ceiling > one.limit;
  const ownerAway = (one: Speaker) => one.role === 'owner' && one.name === '';
  return (
    <section>
      <h3>{t('decision.who')}</h3>
      <div data-place="who">
        <Choice
          label={t('decision.who')}
          quiet
          value={speaker.key}
          options={speakers.map((one) => ({
            value: one.key,
            words: speakerWords(one, order, writing),
            held: (beyond(one) && one.key !== speaker.key) || ownerAway(one),
          }))}
          onChange={(key) => onDraft({ speaker: key })}
        />
        {speaker.name !== '' || speaker.role === 'owner' ? null : (
          <Field
            label={t(speaker.role === 'payer' ? 'decision.namePayer' : 'decision.name')}
            value={draft.name}
            onChange={(name) => onDraft({ name })}
            maxLength={120}
            error={wrongs.who ?? null}
          />
        )}
        {wrongs.who === undefined || (speaker.name === '' && speaker.role !== 'owner') ? null : (
          <p className="wrong-words" role="alert">
            {wrongs.who}
          </p>
        )}
        {speakers.some(ownerAway) ? <p className="small ink-2">{t('decision.ownerHeld')}</p> : null}
        {speakers.filter(beyond).map((one) => (
          <p className="small ink-2" key={one.key}>
            {t('decision.limitHeld', { name: one.name, sum: amountText(one.limit, writing) })}
          </p>
        ))}
      </div>
    </section>
  );
}

function speakerWords(one: Speaker, order: Order, writing: Writing): string {
  if (one.key === 'customer') return t('decision.whoCustomer', { name: one.name });
  if (one.key === 'payer') return t('decision.whoPayer', { name: order.payer?.name ?? '' });
  if (one.key === 'owner') return t('decision.whoOwner');
  if (one.key === 'other') return t('decision.whoOther');
  return one.limit === null
    ? one.name
    : t('decision.whoNamed', { name: one.name, sum: amountText(one.limit, writing) });
}
