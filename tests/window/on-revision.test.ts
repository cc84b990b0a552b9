import { expect, test } from 'vitest';
import { onRevision } from '../../renderer/state/on-revision.ts';
import type { CallAnswer } from '../../renderer/state/transport.ts';

/** A row at revision 3 whose mileage is what is given; what is sent on another revision is refused. */
function row(mileage: number | null) {
  const tried: number[] = [];
  const send = async (revision: number): Promise<CallAnswer<string>> => {
    tried.push(revision);
    if (revision === 3) return { ok: true, output: 'written' };
    const now = { mileage };
    return {
      ok: false,
      error: { code: 'changed-meanwhile', what: 'work_order', id: 'o', revision: 3, now, yours: {} },
    };
  };
  return { tried, send };
}

test('a field that nobody touched is sent again on the newer revision', async () => {
  const { tried, send } = row(null);
  expect(await onRevision(1, send, ({ mileage }) => mileage === null)).toEqual({ ok: true, output: 'written' });
  expect(tried).toEqual([1, 3]);
});

test('a field that somebody else has written is left as it stands', async () => {
  const { tried, send } = row(61_492);
  expect(await onRevision(1, send, ({ mileage }) => mileage === null)).toMatchObject({
    ok: false,
    error: { code: 'changed-meanwhile', now: { mileage: 61_492 } },
  });
  expect(tried).toEqual([1]);
});
