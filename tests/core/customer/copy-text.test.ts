import { expect, test } from 'vitest';
import { copyText } from '../../../core/customer/copy-text.ts';

test('every value that is there stands in the text, a part without rows says so', () => {
  const text = copyText('Per Halloran', {
    'the entry': [
      { name: 'Per Halloran', phone: '555-0177', 'other phone': '', 'bears no tax': null, reminders: false },
    ],
    messages: [],
  });
  expect(text).toBe(
    'Per Halloran\n\n\nTHE ENTRY\n\nname: Per Halloran\nphone: 555-0177\nreminders: no\n\n\nMESSAGES\n\nnothing is kept\n',
  );
});
