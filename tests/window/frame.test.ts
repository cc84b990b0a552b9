import { expect, test } from 'vitest';
import { comboOf, mayAct } from '../../renderer/frame/keys.ts';
import { hrefOf, readRoute } from '../../renderer/frame/router.ts';
import { widthOf } from '../../renderer/frame/width.ts';
import { newRequestId } from '../../renderer/state/request-id.ts';
import { listWords } from '../../renderer/words/list.ts';
import { t, tMaybe } from '../../renderer/words/t.ts';

const press = (over: Partial<KeyboardEvent>) =>
  comboOf({ ...{ ctrlKey: false, metaKey: false, altKey: false, shiftKey: false }, ...{ code: '', key: '' }, ...over });

test('an address names its place, the rest of the path and the query, and comes back the same', () => {
  const route = readRoute('#/orders/a%2Fb/yes?from=today');
  expect(route.place).toBe('orders');
  expect(route.path).toEqual(['a/b', 'yes']);
  expect(route.query.get('from')).toBe('today');
  expect(hrefOf('orders', 'a/b', 'yes')).toBe('#/orders/a%2Fb/yes');
});

test('what is no place is Today, also where it cannot be decoded', () => {
  expect(readRoute('#/nowhere/1')).toMatchObject({ place: 'today', path: [] });
  expect(readRoute('#/cars/%zz').path).toEqual(['%zz']);
  expect(readRoute('').place).toBe('today');
});

test('keys have one name each; Alt reads the place of the key, whatever sign it makes', () => {
  expect(press({ key: 'n', code: 'KeyN' })).toBe('N');
  expect(press({ key: '\u00a1', code: 'Digit1', altKey: true })).toBe('Alt+1');
  expect(press({ key: 'k', code: 'KeyK', metaKey: true })).toBe('Ctrl+K');
  expect(press({ key: 'Enter', code: 'Enter', ctrlKey: true })).toBe('Ctrl+Enter');
  expect(press({ key: ' ', code: 'Space' })).toBe('Space');
  expect(press({ key: '?', code: 'Slash', shiftKey: true })).toBe('?');
  expect(press({ key: 'Enter', code: 'Enter', shiftKey: true })).toBe('Shift+Enter');
});

test('a key that the sheet of keys does not list is none', () => {
  expect(press({ key: 'q', code: 'KeyQ' })).toBeNull();
  expect(press({ key: 'z', code: 'KeyZ', altKey: true })).toBeNull();
  expect(press({ key: 'Enter', code: 'Enter', altKey: true })).toBeNull();
});

test('single signs act only when they are turned on', () => {
  expect(mayAct('N', null, true)).toBe(true);
  expect(mayAct('/', null, false)).toBe(false);
  expect(mayAct('Alt+1', null, false)).toBe(true);
});

test('larger text leaves the room of a smaller window', () => {
  expect(widthOf(820, 100)).toBe('tablet');
  expect(widthOf(1280, 100)).toBe('narrow');
  expect(widthOf(1440, 100)).toBe('usual');
  expect(widthOf(1700, 100)).toBe('wide');
  expect(widthOf(1440, 200)).toBe('tablet');
});

test('request ids are UUIDv7 (RFC 9562): the time first, version 7, variant 10', () => {
  // The time of the example in RFC 9562, appendix A.6.
  const id = newRequestId(0x017f22e279b0);
  expect(id).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(newRequestId()).not.toBe(newRequestId());
});

test('words fill their figures, pick one or many, and say when there are none', () => {
  expect(t('parts.upTo', { amount: '180.00' })).toBe('up to 180.00');
  expect(t('parts.heldWait', { n: 1, letters: 'B', sum: '1.00' })).toBe('B waits for a yes, 1.00.');
  expect(t('parts.heldWait', { n: 2, letters: listWords(['B', 'C']), sum: '2.00' })).toBe(
    'B and C wait for a yes, 2.00.',
  );
  expect(tMaybe('held.nothing-of-the-kind')).toBeNull();
  expect(tMaybe('held.toString')).toBeNull();
});
