import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { rateText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import { readPercent } from '../set-up/percent.ts';
import { problemAt } from '../stock/problem-at.ts';
import { PersonPart } from './PersonPart.tsx';
import { ROLES, readRole, roleOptions, seenBy } from './roles.ts';
import { Setting, useShopPage } from './setting.tsx';
import { WhoSees } from './WhoSees.tsx';

/** Who works here, what they do, what an hour of theirs costs, and their codes. */
export function People() {
  const { shop, settings, mayChange } = useShopPage();
  const writing = useWriting();
  return (
    <>
      <section>
        <h3>{t('start.people')}</h3>
        <dl className="shop-falls">
          {ROLES.map((role) => (
            <div key={role}>
              <dt>{t(`start.${role}`)}</dt>
              <dd>
                {t(`shop.may-${role}`)}
                {role === 'owner' ? null : ` ${t(`shop.sees-${seenBy(role, settings)}`)}`}
              </dd>
            </div>
          ))}
        </dl>
        <Setting
          label={t('shop.deskDiscount')}
          show={({ deskDiscount }) => rateText(deskDiscount * 100, writing)}
          read={(text) => {
            const deskDiscount = readPercent(text, 2);
            return deskDiscount === null ? null : { deskDiscount };
          }}
          wrong={t('start.overWrong')}
          note={t('shop.deskDiscountNote')}
        />
      </section>
      <WhoSees />
      {shop.people.map((person) => (
        <PersonPart key={person.id} person={person} />
      ))}
      {mayChange ? <NewPerson /> : null}
    </>
  );
}

const EMPTY = { name: '', role: 'mechanic', code: '', payRate: '0' };

function NewPerson() {
  const writing = useWriting();
  const add = useDo('person.add');
  const [draft, setDraft] = useState(EMPTY);
  const [wrong, setWrong] = useState<Partial<typeof EMPTY>>({});
  const change = (now: Partial<typeof EMPTY>) => setDraft((was) => ({ ...was, ...now }));
  const go = async () => {
    const payRate = readAmount(draft.payRate, writing);
    const fits = {
      ...(draft.name.trim() === '' ? { name: t('start.personNeeded') } : {}),
      ...(draft.code.length < 4 ? { code: t('start.codeWrong') } : {}),
      ...(payRate === null || payRate < 0 ? { payRate: t('start.hourWrong') } : {}),
    };
    setWrong(fits);
    if (payRate === null || Object.keys(fits).length > 0) return;
    const answer = await add.run({ name: draft.name, role: readRole(draft.role), code: draft.code, payRate });
    if (answer.ok) setDraft(EMPTY);
  };
  return (
    <section>
      <h3>{t('shop.addPerson')}</h3>
      <form
        className="shop-person"
        onSubmit={(event) => {
          event.preventDefault();
          void go();
        }}
      >
        <Field
          label={t('start.person')}
          value={draft.name}
          onChange={(name) => change({ name })}
          error={wrong.name ?? problemAt(add.error, 'name', 'shop')}
          maxLength={60}
        />
        <Pick
          label={t('start.does')}
          value={draft.role}
          options={roleOptions()}
          onChange={(role) => change({ role })}
        />
        <Field
          label={t('shop.payRate')}
          value={draft.payRate}
          onChange={(payRate) => change({ payRate })}
          error={wrong.payRate ?? null}
          inputMode="decimal"
        />
        <Field
          label={t('start.code')}
          type="password"
          value={draft.code}
          onChange={(code) => change({ code })}
          error={wrong.code ?? null}
          autoComplete="new-password"
          maxLength={40}
        />
        <Button type="submit" disabled={add.busy}>
          {t('shop.addPerson')}
        </Button>
      </form>
      {add.error === null || add.error.code === 'bad-input' ? null : (
        <p className="wrong-words" role="alert">
          {errorSentence(add.error, writing)}
        </p>
      )}
    </section>
  );
}
