import { NotSaved } from '../../parts/Notice.tsx';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';

interface Props {
  readonly orderId: string;
  readonly revision: number;
  /** Plate or car. */
  readonly car: string;
}

/** Beside a car that should be here by now: that it did not come. The order says how that is taken back. */
export function NotCome({ orderId, revision, car }: Props) {
  const say = useDo('booking.noShow');
  return (
    <>
      <button
        type="button"
        className="link small today-act"
        aria-label={`${t('plan.noShow')}: ${car}`}
        aria-disabled={say.busy}
        onClick={() => void say.run({ orderId, revision, came: false })}
      >
        {t('plan.noShow')}
      </button>
      <NotSaved error={say.error} />
    </>
  );
}
