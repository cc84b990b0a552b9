import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { now, today } from './clock.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

/** Today says more than whose move it is: when work will be done, whose hours there are, and what else waits. */

const TEN_MINUTES = 600_000;

test('work that cannot be done by its promise is told before it is late; a paper that nobody sent waits', async ({
  garage,
  page,
}) => {
  const id = await garage.booked({ promiseAt: now() + TEN_MINUTES });
  await garage.job(id);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.yes(id);
  const { rows, waiting } = await garage.did('Odile', 'today.get', {});
  // An hour and a half was sold, nothing is clocked.
  expect(rows[0]?.expected).toMatchObject({ leftMinutes: 90, late: true });
  expect(waiting.toSend).toBe(1);
  await enter(page, garage);
  const row = page.getByRole('link', { name: /KTB 4471.*Corvane R/ });
  await expect(row).toContainText(t('parts.soon'));
  await expect(row).toContainText(t('today.doneTooLate', { time: '' }).trim().split(':')[0] ?? '');
  // Two mechanics of 8 h, 85 % of it planned, on a day that the garage works; none else.
  const strip = page.locator('.strip-people');
  const { days } = await garage.did('Odile', 'booking.capacity', {
    from: today(),
    to: today(),
  });
  const planned = (days[0]?.planned ?? 0) / 1000;
  await expect(strip).toContainText(t('plan.free', { free: planned, planned }));
  await expectAxeClean(page, 'Today with all that waits');
  await page.getByRole('link', { name: t('today.toSend', { n: 1 }) }).click();
  await expect(page).toHaveURL(/money\/to-send/);
});
