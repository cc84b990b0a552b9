import type { OutputOf } from '../../core/contract/index.ts';
import { t } from '../../renderer/words/t.ts';
import { openTheGarage } from './first-start.ts';
import { expect, test } from './shop-fixture.ts';
import { field } from './window.ts';

test('an empty folder becomes a garage that takes its first car, without the mouse', async ({ shop, page }) => {
  await page.goto(shop.host.newLink('window'));
  const keys = await openTheGarage(page);
  keys.report('the garage opened', 73);
  await keys.press('n');
  await expect(field(page, t('intake.phone'))).toBeFocused();

  const ask = async (personId: string | null) => {
    const answer = await shop.shop.call('shop.get', {}, { personId, device: 'test' });
    if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    return answer.output as OutputOf<'shop.get'>;
  };
  const odile = (await ask(null)).people.find((person) => person.name === 'Odile');
  expect(odile).toMatchObject({ role: 'owner' });
  const { settings, rates } = await ask(odile?.id ?? null);
  expect(settings).toMatchObject({
    name: 'Saltmarsh',
    taxes: [{ name: 'Tax', ratePpm: 62_500, kinds: ['part', 'fluid'] }],
    overrun: { mode: 'none' },
  });
  expect(rates).toMatchObject([{ price: 9600, usual: true }]);
});
