import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { SWAP_TITLE } from './swap.ts';
import { enter, field, sheetOf, typeCell } from './window.ts';

async function swap(garage: Garage): Promise<string> {
  const { rows } = await garage.did('Odile', 'jobBook.list', {});
  return rows.find((row) => row.title === SWAP_TITLE)?.id ?? '';
}
async function openJob(page: Page, garage: Garage, id: string): Promise<void> {
  await page.goto(`${garage.door.host.address}/${hrefOf('job-book', id)}`);
  await expect(page.getByRole('region', { name: t('jobBook.procedure') })).toBeVisible();
}
const use = (page: Page, n: number) => page.getByRole('button', { name: t('jobBook.use', { n }) });

test('a job is written by keys, kept with Ctrl Enter, and put on a sheet', async ({ garage, page }) => {
  const orderId = await garage.booked();
  await enter(page, garage, 'Piet');
  await openJob(page, garage, 'new');
  await expect(field(page, t('jobBook.titleCell'))).toBeFocused();
  await page.keyboard.type('Change the axle seal');
  await typeCell(page, t('jobBook.bookHours'), 'long');
  await expect(page.getByText(t('jobBook.hoursWrong'))).toBeVisible();
  await typeCell(page, t('jobBook.bookHours'), '2.5');
  await typeCell(page, t('jobBook.addLine'), 'Output seal 2');
  await typeCell(page, t('jobBook.eachOf', { words: 'Output seal' }), '38.50');
  await typeCell(page, t('jobBook.addStep'), 'Drain warm');
  await typeCell(page, t('jobBook.addStep'), 'Fill plug loosened');
  // 2.5 h at 96.00, two seals at 38.50, 5 % supplies on labour.
  await expect(page.getByText('329.00')).toBeVisible();
  await page.getByRole('button', { name: /Drain warm/ }).click();
  await page.getByLabel(t('jobBook.plug')).selectOption('drained');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /Fill plug loosened/ }).click();
  await page.getByLabel(t('jobBook.plug')).selectOption('fill-opened');
  await expectAxeClean(page, 'a step open and a warning');
  // The warning mends itself: the fill plug comes before the drain.
  await page.getByRole('button', { name: t('jobBook.mend-move-step') }).click();
  await expect(page.getByRole('button', { name: t('jobBook.mend-move-step') })).toHaveCount(0);
  // What is still being typed is kept too.
  await field(page, t('jobBook.source')).fill('our own, page 1');
  await page.keyboard.press('Control+Enter');
  const kept = async () =>
    (await garage.did('Odile', 'jobBook.list', {})).rows.find((one) => one.title === 'Change the axle seal')?.id ?? '';
  await expect.poll(kept).not.toBe('');
  await expect(page.getByText(t('jobBook.versionOf', { n: 1 }))).toBeVisible();
  const { content } = await garage.did('Odile', 'jobBook.get', { id: await kept() });
  expect(content).toMatchObject({
    bookHours: 2500,
    sourceOfFigures: 'our own, page 1',
    lines: [{ kind: 'part', words: 'Output seal', quantity: 2000, unitPrice: 3850 }],
    steps: [
      { n: 1, do: 'Fill plug loosened', plug: 'fill-opened' },
      { n: 2, do: 'Drain warm', plug: 'drained' },
    ],
  });
  await page.getByRole('button', { name: t('jobBook.putOn') }).click();
  await page.getByRole('button', { name: t('jobBook.putOnGo') }).click();
  await expect(sheetOf(page)).toBeVisible();
  expect((await garage.order(orderId)).jobs.map((job) => job.title)).toEqual(['Change the axle seal']);
});

test('rounds of a torque, a step moved and taken out and put back; another version is kept', async ({
  garage,
  page,
}) => {
  const id = await swap(garage);
  await enter(page, garage);
  await openJob(page, garage, id);
  // Dragged down and back up again.
  const row = (name: RegExp) => page.getByRole('button', { name });
  await row(/^6 Propshaft/).dragTo(row(/^8 Rear cover/));
  await expect(row(/^8 Propshaft/)).toBeVisible();
  await row(/^8 Propshaft/).dragTo(row(/^6 Axle/));
  await expect(row(/^6 Propshaft/)).toBeVisible();
  await page.getByRole('button', { name: /^10 / }).click();
  await typeCell(page, t('jobBook.round', { n: 1 }), 'tight');
  await expect(page.getByText(t('jobBook.stagesWrong'))).toBeVisible();
  await typeCell(page, t('jobBook.round', { n: 1 }), '30, 60, 90°');
  // What is being typed when it moves goes with it.
  await field(page, t('jobBook.tool')).fill('torque wrench 3');
  await page.keyboard.press('Alt+ArrowUp');
  await expect(page.getByRole('group', { name: t('jobBook.step', { n: 9 }) })).toBeVisible();
  await expect(field(page, t('jobBook.tool'))).toHaveValue('torque wrench 3');
  await page.getByRole('button', { name: t('jobBook.takeOutStep', { n: 9 }) }).click();
  await expect(page.getByText(t('jobBook.wasTakenOut'))).toBeVisible();
  await page.keyboard.press('Control+z');
  await use(page, 2).click();
  await expect(page.getByText(t('jobBook.inUseNow', { n: 2 }))).toBeVisible();
  const { content } = await garage.did('Odile', 'jobBook.get', { id });
  expect(content.steps[8]?.torque?.stages).toEqual([{ Nm: 30 }, { Nm: 60 }, { degrees: 90 }]);
  expect(content.steps.map((step) => step.n)).toEqual(content.steps.map((_, at) => at + 1));
});

test('a version kept meanwhile is told; mine can be kept over it', async ({ garage, page }) => {
  const id = await swap(garage);
  await enter(page, garage);
  await openJob(page, garage, id);
  await typeCell(page, t('jobBook.bookHours'), '7');
  const theirs = await garage.did('Piet', 'jobBook.get', { id });
  await garage.did('Piet', 'jobBook.save', { id, basedOn: 1, content: { ...theirs.content, people: 3 } });
  await expect(page.getByText(t('jobBook.meanwhile', { n: 2 }))).toBeVisible();
  await page.getByRole('button', { name: t('jobBook.useOver', { n: 3 }) }).click();
  await expect(page.getByText(t('jobBook.inUseNow', { n: 3 }))).toBeVisible();
  expect((await garage.did('Odile', 'jobBook.get', { id })).content).toMatchObject({ bookHours: 7000, people: 2 });
});

test('a job never written before: steps one after the other by keys, bolts in pairs, a draft, then the version put to use', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await openJob(page, garage, 'new');
  let keys = 0;
  const press = async (...all: readonly string[]) => {
    for (const key of all) {
      keys += 1;
      await page.keyboard.press(key);
    }
  };
  const type = async (text: string) => {
    keys += text.length;
    await page.keyboard.type(text);
  };
  /** Tab until the cell of that name has the focus. */
  const tabTo = async (name: string) => {
    for (let far = 0; far < 80; far += 1) {
      const here = await page.evaluate(
        () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
      );
      if (here === name) return;
      await press('Tab');
    }
    throw new Error(`no Tab leads to ${name}`);
  };
  await expect(field(page, t('jobBook.titleCell'))).toBeFocused();
  await type('Reseal the transfer case');
  await tabTo(t('jobBook.bookHours'));
  await type('3.4');
  await tabTo(t('jobBook.addLine'));
  await type('Cover gasket');
  await tabTo(t('jobBook.addStep'));
  for (const step of ['Lift, arms locked', 'Drain warm', 'Fill plug loosened', 'Cover on']) {
    await type(step);
    await press('Enter');
  }
  // The last step opens from its row.
  await press('Shift+Tab', 'Enter');
  await expect(page.getByRole('group', { name: t('jobBook.step', { n: 4 }) })).toBeVisible();
  await tabTo(t('jobBook.torqueAdd'));
  await press('Enter');
  await page.keyboard.press('Shift+Tab');
  await page.getByLabel(t('jobBook.pattern')).focus();
  await page.getByLabel(t('jobBook.pattern')).selectOption('pairs');
  await typeCell(page, t('jobBook.count'), '10');
  await typeCell(page, t('jobBook.round', { n: 1 }), '12, 24');
  await typeCell(page, t('jobBook.thread'), 'M8 x 1.25, dry');
  await expect(page.getByRole('img', { name: t('parts.boltsInOrder', { n: 10 }) })).toBeVisible();
  await expect(page.getByText(t('jobBook.ticks', { n: 20 }))).toBeVisible();
  // Escape leaves the cell, then the step; the keys go on from its row.
  await press('Escape', 'Escape');
  await expect(page.getByRole('button', { name: /^4 Cover on/ })).toBeFocused();
  // The row in hand moves by keys too, and keeps the focus.
  await press('Alt+ArrowUp');
  await expect(page.getByRole('button', { name: /^3 Cover on/ })).toBeFocused();
  await press('Alt+ArrowDown', 'ArrowUp', 'ArrowDown');
  await expect(page.getByRole('button', { name: /^4 Cover on/ })).toBeFocused();
  // No source: a draft may hold it, the bench may not.
  await expect(page.getByText(t('jobBook.keepsFromBench', { n: 1, version: 1 }))).toBeVisible();
  await page.getByRole('button', { name: t('jobBook.keepDraft') }).click();
  await expect(page.getByText(t('jobBook.versionDraft', { n: 1 }))).toBeVisible();
  await expect(page.getByRole('region', { name: t('jobBook.versions') })).toContainText(t('jobBook.firstVersion'));
  await expectAxeClean(page, 'a draft and its versions');
  await page.getByRole('button', { name: t('jobBook.mend-name-source') }).click();
  await expect(field(page, t('jobBook.source'))).toBeFocused();
  await type('our own, page 3');
  await press('Control+Enter');
  await expect(page.getByText(t('jobBook.inUseNow', { n: 2 }))).toBeVisible();
  const { rows } = await garage.did('Odile', 'jobBook.list', {});
  const row = rows.find((one) => one.title === 'Reseal the transfer case');
  const { content, inUse } = await garage.did('Odile', 'jobBook.get', { id: row?.id ?? '' });
  expect([inUse, content.bookHours, content.steps.length]).toEqual([2, 3400, 4]);
  expect(content.steps[3]?.torque).toMatchObject({
    ...{ pattern: 'pairs', count: 10, stages: [{ Nm: 12 }, { Nm: 24 }] },
    thread: { words: 'M8 x 1.25', diameter: 8, nut: 'dry' },
  });
  // The bench copy of it is handed out as a file.
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('jobBook.printCopy') }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('Bench copy, Reseal the transfer case.pdf');
  console.log(`a new procedure of four steps: ${keys} keys pressed besides the cells of its torque`);
  expect(keys).toBeLessThan(400);
});

test('a job is put on a sheet with one that goes with it, which takes less time for the shared taking apart', async ({
  garage,
  page,
}) => {
  const orderId = await garage.booked();
  const seal = await garage.did('Odile', 'jobBook.save', {
    ...{ id: null, basedOn: 0 },
    content: {
      ...{ title: 'Left output seal', bookHours: 1100, sourceOfFigures: '', lines: [], cautions: [] },
      steps: [{ n: 1, do: 'Seal out' }],
    },
  });
  const id = await swap(garage);
  await enter(page, garage);
  await openJob(page, garage, id);
  await page.getByLabel(t('jobBook.goesWithAdd')).selectOption({ label: 'Left output seal' });
  await typeCell(page, t('jobBook.hoursLessOf', { title: 'Left output seal' }), '0.3');
  await typeCell(page, t('jobBook.dueAdd'), 'Run-in oil after 30 days or 1000');
  await use(page, 2).click();
  await expect(page.getByText(t('jobBook.inUseNow', { n: 2 }))).toBeVisible();
  await expectAxeClean(page, 'what goes with a job and what is due after it');
  await page.getByRole('button', { name: t('jobBook.putOn') }).click();
  await page.getByText(t('jobBook.putOnWith', { title: 'Left output seal' })).click();
  await page.getByRole('button', { name: t('jobBook.putOnGo') }).click();
  await expect(sheetOf(page)).toBeVisible();
  const { jobs } = await garage.order(orderId);
  expect(jobs.map((job) => job.title)).toEqual([SWAP_TITLE, 'Left output seal']);
  expect(jobs[1]?.lines[0]).toMatchObject({ charged: 800, overlapJobId: jobs[0]?.id });
  const { content } = await garage.did('Odile', 'jobBook.get', { id });
  expect(content.goesWith).toEqual([{ bookJobId: seal.id, hoursLess: 300 }]);
  expect(content.after).toEqual([{ source: 'service', words: 'Run-in oil', days: 30, distance: 1000 }]);
});

test('a mechanic reads the job and changes nothing', async ({ garage, page }) => {
  const id = await swap(garage);
  await enter(page, garage, 'Runa');
  await openJob(page, garage, id);
  await expect(field(page, t('jobBook.bookHours'))).toHaveAttribute('readonly', '');
  await expect(page.getByRole('button', { name: t('jobBook.putOn') })).toHaveCount(0);
});
