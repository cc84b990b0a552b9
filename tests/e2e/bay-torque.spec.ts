import type { InputOf } from '../../core/contract/index.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { enterByTouch, inHand, press, TABLET, tighten, toBay, tooSmall } from './bay.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';

test.use(TABLET);

type Step = InputOf<'jobBook.save'>['content']['steps'][number];

/** A car with one invented job of these steps, said yes to. */
async function orderWith(
  garage: Garage,
  steps: readonly Omit<Step, 'n'>[],
): Promise<{ orderId: string; jobId: string }> {
  const content = {
    ...{ title: 'Invented job', bookHours: 1000, sourceOfFigures: 'invented for the test', lines: [], cautions: [] },
    steps: steps.map((step, at) => ({ ...step, n: at + 1 })),
  };
  const { id: bookJobId } = await garage.did('Odile', 'jobBook.save', { id: null, basedOn: 0, content });
  const orderId = await garage.booked();
  const { id: jobId } = await garage.did('Odile', 'job.fromBook', { orderId, bookJobId });
  await garage.yes(orderId);
  return { orderId, jobId };
}

test('a wrench with an extension, another that is overdue: what to set is told, and the record names it', async ({
  garage,
  page,
}) => {
  await garage.did('Odile', 'wrench.add', { name: 'W3', least: 20_000, most: 200_000, lever: 400_000 });
  await garage.did('Odile', 'wrench.add', {
    ...{ name: 'W1', least: 20_000, most: 200_000, lever: 400_000, dueOn: '2020-01-31' },
  });
  const { orderId, jobId } = await orderWith(garage, [
    {
      do: 'Cap bolts',
      torque: {
        ...{ what: 'Caps', pattern: 'rows', count: 4, rows: [2, 2], checkRound: true },
        stages: [{ Nm: 40 }, { Nm: 100, lbfft: 74 }],
        extension: { length: 100 },
        thread: { words: 'M10 x 1.5', diameter: 10, nut: 'dry' },
      },
    },
  ]);
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId);
  const step = inHand(page, 1);
  await step.getByText('W3', { exact: true }).tap();
  // 40 N·m with 400 mm of lever and 100 mm on it: 40 x 400 / 500 = 32 N·m.
  await expect(step).toContainText(t('bench.setWrench', { figures: '32\u00a0N·m, 24\u00a0lbf·ft' }));
  await step.getByText(t('bench.wrenchOverdue', { name: 'W1' })).tap();
  await expect(step.getByRole('alert')).toContainText('31 Jan 2020');
  await expectAxeClean(page, 'a wrench that is overdue');
  expect(await tooSmall(page)).toEqual([]);
  for (const bolt of [1, 2, 3, 4]) await tighten(page, bolt);
  // A pair that is printed in both units stays that pair.
  await expect(step).toContainText('74\u00a0lbf·ft');
  for (const bolt of [1, 2, 3, 4]) await tighten(page, bolt);
  await expect(step).toContainText(t('bench.checkRound'));
  await expect(step).toContainText(t('bench.overdueUsed'));
  // Eleven of twelve: with one missing the step cannot be done.
  for (let touch = 8; touch < 11; touch += 1)
    await page.getByRole('button', { name: new RegExp(`^${t('bench.boltChecked', { bolt: '\\d' })}$`) }).tap();
  await expect.poll(async () => (await garage.did('Runa', 'torque.get', { jobId, step: 1 })).made).toBe(11);
  const left = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
  expect(left.touches.length).toBe(12);
  expect(left.touches.slice(0, 8).map((touch) => touch.made?.wrench)).toEqual(Array.from({ length: 8 }, () => 'W1'));
  expect(left.touches[0]?.made?.overdue).toBe(true);
  await expect(step.getByRole('button', { name: t('bench.stepDone', { n: 1 }) })).toHaveCount(0);
});

for (const [what, torque] of [
  ['holes at degrees of their own', { pattern: 'angles', count: 3, degrees: [0, 100, 250] }],
  ['pairs with a clip', { pattern: 'pairs', count: 6 }],
  ['two sides of the car', { pattern: 'ring', count: 5, sides: 2 }],
] as const)
  test(`${what}: every bolt once, in order, to the end`, async ({ garage, page }) => {
    const { orderId, jobId } = await orderWith(garage, [
      {
        do: 'Bolts',
        torque: { ...torque, degrees: [...('degrees' in torque ? torque.degrees : [])], stages: [{ Nm: 25 }] },
      },
    ]);
    await enterByTouch(page, garage.door.host.newLink('tablet'));
    await toBay(page, garage, orderId);
    const sides = 'sides' in torque ? torque.sides : 1;
    for (let side = 1; side <= sides; side += 1)
      for (let bolt = 1; bolt <= torque.count; bolt += 1) await tighten(page, bolt);
    await expect(inHand(page, 1)).toContainText(t('parts.allTight', { n: torque.count * sides }));
    await expect.poll(async () => (await garage.did('Runa', 'torque.get', { jobId, step: 1 })).due).toBeNull();
  });

test('oil by strokes of a measured pump, what was filled last time, and a sample with its label', async ({
  garage,
  page,
}) => {
  await garage.did('Odile', 'pump.add', { name: 'Pump A', calibration: { strokes: 50, quantity: 1040 } });
  const steps: Omit<Step, 'n'>[] = [
    { do: 'Drain', plug: 'drained', fluidOut: { what: 'gear oil', quantity: 1200 }, sample: { millilitres: 100 } },
    { do: 'Fill', level: 'it runs over', fluidIn: { what: 'gear oil', quantity: 1200 } },
  ];
  const { orderId, jobId } = await orderWith(garage, [{ do: 'Fill plug', plug: 'fill-opened' }, ...steps]);
  await garage.did('Runa', 'step.tick', { jobId, n: 1, state: 'done' });
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId);
  const drain = inHand(page, 2);
  await drain
    .getByRole('group', { name: t('bench.unit') })
    .first()
    .getByText(t('bench.unit-rear'))
    .tap();
  for (let tenth = 0; tenth < 10; tenth += 1) await drain.getByRole('button', { name: /^More/ }).tap();
  await press(drain, t('bench.recordOut'));
  await expect(drain).toContainText('1\u00a0L');
  // The unit that was drained is the one that is sampled.
  await expect(drain.getByRole('textbox', { name: t('bench.unitOther') }).last()).toHaveValue(t('bench.unit-rear'));
  await drain.getByLabel(t('bench.fluidWasIn', { unit: 'km' })).fill('40000');
  await press(drain, t('bench.drawSample'));
  await expect(drain.locator('.sample-label')).toBeVisible();
  const [label] = await Promise.all([page.waitForEvent('download'), press(drain, t('bench.printLabel'))]);
  expect(label.suggestedFilename()).toMatch(/\.pdf$/);
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'a sample that was drawn');
  await press(drain, t('bench.stepDone', { n: 2 }));

  const fill = inHand(page, 3);
  await fill.getByText(t('bench.strokesOf', { pump: 'Pump A' })).tap();
  await fill.getByRole('textbox', { name: t('bench.howMuch') }).fill('53');
  // 53 x 20.8 ml = 1.1024 L, to a millilitre.
  await expect(fill).toContainText(t('bench.strokesMake', { quantity: '1.102\u00a0L' }));
  await press(fill, t('bench.recordIn'));
  await expect(fill).toContainText('53 strokes of Pump A, 1.102\u00a0L');

  // The next visit of the same car is offered it.
  const { car } = await garage.order(orderId);
  const { id: bookJobId } = await garage.did('Odile', 'jobBook.save', {
    ...{ id: null, basedOn: 0 },
    content: {
      ...{ title: 'Oil again', bookHours: 500, sourceOfFigures: 'invented', lines: [], cautions: [] },
      steps: [{ n: 1, do: 'Fill', fluidIn: { what: 'gear oil', quantity: 1200 } }],
    },
  });
  const again = await garage.booked({
    car: { id: car.id },
    customer: { id: (await garage.order(orderId)).customer.id },
    mileage: 52_000,
  });
  await garage.did('Odile', 'job.fromBook', { orderId: again, bookJobId });
  await garage.yes(again);
  await toBay(page, garage, again);
  await page
    .getByRole('group', { name: t('bench.unit') })
    .getByText(t('bench.unit-rear'))
    .tap();
  await page.getByRole('button', { name: /^Last time.*53 strokes of Pump A|^This car.*53 strokes of Pump A/ }).tap();
  await expect(page.getByRole('textbox', { name: t('bench.howMuch') })).toHaveValue('53');
  await press(page, t('bench.recordIn'));
  await expect
    .poll(async () => (await garage.did('Runa', 'fluid.list', { orderId: again })).rows.map((row) => row.quantity))
    .toEqual([1102]);
});
