import { useState } from 'react';
import { useRoute } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import type { Order } from '../../sheet/order.ts';
import { t } from '../../words/t.ts';
import { ContactLog } from './ContactLog.tsx';
import { Draft } from './Draft.tsx';
import { KeysOut } from './KeysOut.tsx';
import { Storage } from './Storage.tsx';
import './contact.css';

const ABOUTS = ['ready', 'found', 'part-late'] as const;

/** Beside an order: what to tell the customer and what was said, keys given out, what leaving the car here costs. */
export function OrderContact({ order }: { readonly order: Order }) {
  const asked = useRoute().query.get('tell');
  const [about, setAbout] = useState(ABOUTS.find((one) => one === asked) ?? null);
  const [said, setSaid] = useState('');
  return (
    <>
      <section aria-label={t('contact.title')}>
        <h3>{t('contact.title')}</h3>
        <div className="contact-acts">
          {ABOUTS.map((one) => (
            <Button key={one} small expanded={about === one} onClick={() => setAbout(about === one ? null : one)}>
              {t(`contact.tell-${one}`)}
            </Button>
          ))}
          <span role="status" className="small ink-2">
            {said}
          </span>
        </div>
        {about === null ? null : (
          <Draft
            key={about}
            about={about}
            orderId={order.id}
            onRecorded={(way) => {
              setAbout(null);
              setSaid(t('contact.kept', { way: t(`contact.way-${way}`) }));
            }}
          />
        )}
        <ContactLog customerId={order.customer.id} orderId={order.id} />
      </section>
      {order.counterSale ? null : (
        <>
          <KeysOut orderId={order.id} />
          <Storage order={order} />
        </>
      )}
    </>
  );
}
