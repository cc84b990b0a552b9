import { randomBytes } from 'node:crypto';
import { createCanvas } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { PHOTO_MOST } from '../../core/contract/photo.ts';
import { startHost } from '../../electron/host.ts';
import { practiceShop } from '../db/practice-shop.ts';

test('the largest photo that is taken goes through the door', async () => {
  const garage = await practiceShop();
  const host = await startHost({ shop: garage.shop, root: garage.folder });
  try {
    const order = await garage.did('Desk', 'order.book', {
      ...{ customer: { add: { name: 'Ilse' } }, car: { add: { words: 'Van', unit: 'km' as const } } },
      ...{ complaint: 'Leaks.', here: true },
    });
    const entered = await fetch(host.newLink('tablet'));
    const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    const post = async (path: string, body: unknown) => {
      const headers = { cookie, 'content-type': 'application/json' };
      const answer = await fetch(`${host.address}${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
      return (await answer.json()) as unknown;
    };
    expect(await post('/enter', { person: 'Runa', code: 'runa-code' })).toMatchObject({ ok: true });
    // A picture with something behind its end, as cameras write it, up to the last byte.
    const picture = createCanvas(40, 30).toBuffer('image/jpeg', 80);
    const keep = (bytes: number) => {
      const base64 = Buffer.concat([picture, randomBytes(bytes - picture.length)]).toString('base64');
      const input = { orderId: order.id, of: { what: 'order', id: order.id }, base64 };
      return post('/call', { operation: 'photo.keep', input });
    };
    expect(await keep(PHOTO_MOST)).toMatchObject({ ok: true, output: { again: false } });
    expect(await keep(PHOTO_MOST + 1)).toMatchObject({ ok: false, error: { code: 'bad-input' } });
  } finally {
    await host.close();
    await garage.end();
  }
});
