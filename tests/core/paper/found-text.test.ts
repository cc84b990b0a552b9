import { expect, test } from 'vitest';
import { foundText } from '../../../core/paper/found-text.ts';
import { COMMON } from '../../paper/papers.ts';

const plain = { text: 'Drop link loose', place: '', measured: null };
const measured = { what: 'play', value: 1200, unit: 'mm', least: null, most: 500, source: 'our own figure' };
const said = (found: Parameters<typeof foundText>[0], language: 'en' | 'de' = 'en') =>
  foundText(found, language, COMMON.currency).replaceAll('\u00a0', ' ');

test('a finding is a sentence, with where and what was measured against its limit', () => {
  expect(said(plain)).toBe('Drop link loose.');
  expect(said({ ...plain, text: 'Drop link loose.' })).toBe('Drop link loose.');
  expect(said({ ...plain, text: 'Is it the belt?' })).toBe('Is it the belt?');
  expect(said({ text: 'Drop link loose.', place: 'rear left', measured })).toBe(
    'Drop link loose, rear left, play 1.2 mm (at most 0.5 mm, limit: our own figure).',
  );
  const both = { ...measured, least: 100, source: '' };
  expect(said({ ...plain, measured: both }, 'de')).toBe(
    'Drop link loose, play 1.2 mm (mindestens 0.1 mm, höchstens 0.5 mm).',
  );
});
