import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { SignaturePad } from '../../parts/SignaturePad.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useShop, useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Change, Draft, Errors } from './draft.ts';
import { Pick, Talk } from './Talk.tsx';

interface Props {
  readonly draft: Draft;
  readonly change: Change;
  readonly errors: Errors;
}

/** What was agreed at the door: old parts, a test drive, storage, a yes to look, a deposit; and their name under it. */
export function AgreedRow({ draft, change, errors }: Props) {
  const named =
    useAsk('customer.get', draft.customerId === null ? null : { id: draft.customerId }).data?.fields.mayYes ?? [];
  const usual = useShop()?.settings?.storage ?? null;
  const writing = useWriting();
  const tellStorage = (storageTold: boolean) =>
    change({
      storageTold,
      ...(storageTold && usual !== null && draft.storagePerDay === ''
        ? { storagePerDay: amountText(usual.perDay, writing), storageFree: String(usual.freeWorkingDays) }
        : {}),
    });
  const looks = draft.lookUpTo.trim() !== '';
  return (
    <Talk head={t('intake.agreed')}>
      <div className="side-by-side">
        <Choice
          label={t('intake.drive')}
          value={draft.drive}
          options={[
            { value: 'not-asked', words: t('intake.notAsked') },
            { value: 'yes', words: t('intake.yes') },
            { value: 'no', words: t('intake.no') },
          ]}
          onChange={(drive) => change({ drive })}
        />
        {draft.drive === 'yes' ? (
          <Field
            label={t('intake.driveLimit')}
            value={draft.driveLimit}
            onChange={(driveLimit) => change({ driveLimit })}
            maxLength={60}
          />
        ) : null}
      </div>
      <Choice
        label={t('intake.oldParts')}
        value={draft.oldParts}
        options={[
          { value: 'unasked', words: t('intake.notAsked') },
          { value: 'show', words: t('intake.show') },
          { value: 'return', words: t('intake.return') },
          { value: 'dispose', words: t('intake.dispose') },
        ]}
        onChange={(oldParts) => change({ oldParts })}
      />
      <div>
        <Tick ticked={draft.storageTold} onTick={tellStorage}>
          {t('intake.storageTold')}
        </Tick>
      </div>
      {draft.storageTold ? (
        <div className="side-by-side">
          <Field
            label={t('intake.storagePerDay')}
            value={draft.storagePerDay}
            onChange={(storagePerDay) => change({ storagePerDay })}
            inputMode="decimal"
            error={errors.storagePerDay ?? null}
            {...(usual !== null && draft.storagePerDay === amountText(usual.perDay, writing)
              ? { filledFrom: t('frame.shop') }
              : {})}
          />
          <Field
            label={t('intake.storageFree')}
            value={draft.storageFree}
            onChange={(storageFree) => change({ storageFree })}
            inputMode="numeric"
            error={errors.storageFree ?? null}
          />
        </div>
      ) : null}
      <div className="side-by-side">
        <Field
          label={t('intake.look')}
          value={draft.lookUpTo}
          onChange={(lookUpTo) => change({ lookUpTo })}
          inputMode="decimal"
          error={errors.lookUpTo ?? null}
        />
        <Field
          label={t('intake.deposit')}
          value={draft.deposit}
          onChange={(deposit) => change({ deposit })}
          inputMode="decimal"
          error={errors.deposit ?? null}
        />
      </div>
      {looks ? (
        <>
          <Choice
            label={t('intake.lookWay')}
            value={draft.lookWay}
            options={[
              { value: 'person', words: t('intake.lookPerson') },
              { value: 'phone', words: t('intake.lookPhone') },
              { value: 'signed', words: t('intake.lookSigned') },
            ]}
            onChange={(lookWay) => change({ lookWay })}
          />
          {named.length === 0 ? null : (
            <Pick
              label={t('intake.lookBy')}
              value={draft.lookBy}
              options={[
                { value: '', words: draft.name },
                ...named.map((one) => ({ value: one.name, words: one.name })),
              ]}
              onChange={(lookBy) => change({ lookBy })}
            />
          )}
        </>
      ) : null}
      {draft.deposit.trim() === '' ? null : (
        <Choice
          label={t('intake.depositWay')}
          value={draft.depositWay}
          options={[
            { value: 'cash', words: t('intake.cash') },
            { value: 'card', words: t('intake.card') },
            { value: 'transfer', words: t('intake.transfer') },
          ]}
          onChange={(depositWay) => change({ depositWay })}
        />
      )}
      {draft.night ? (
        <p className="small ink-2">{t('intake.nightUnsigned')}</p>
      ) : (
        <SignaturePad
          words={t(looks ? 'intake.signLook' : 'intake.sign')}
          strokes={draft.strokes}
          onChange={(strokes) => change({ strokes })}
          onPaper={draft.onPaper}
          setOnPaper={(onPaper) => change({ onPaper })}
        />
      )}
      {errors.lookWay === undefined ? null : (
        <p className="wrong-words" role="alert">
          {errors.lookWay}
        </p>
      )}
    </Talk>
  );
}
