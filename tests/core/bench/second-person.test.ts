import { describe, expect, test } from 'vitest';
import { doersOf, lacksOther, type StepSigned } from '../../../core/bench/second-person.ts';

// Common practice, no source: whoever did the work neither signs it nor drives it.
const step = (more: Partial<StepSigned>): StepSigned => ({
  second: '',
  state: 'done',
  byId: 'runa',
  secondId: null,
  ...more,
});
const doers = new Set(['runa']);

describe('a step that somebody else signs', () => {
  const signs = (more: Partial<StepSigned>) => lacksOther(step({ second: 'signs', ...more }), doers);
  test('lacks them until they have', () => {
    expect(signs({})).toBe(true);
    expect(signs({ secondId: 'piet' })).toBe(false);
  });
  test('lacks them while it is open or failed, and not where it is not needed', () => {
    expect(signs({ state: 'open', secondId: 'piet' })).toBe(true);
    expect(signs({ state: 'failed', secondId: 'piet' })).toBe(true);
    expect(signs({ state: 'not-needed' })).toBe(false);
  });
});

describe('a step that somebody else does', () => {
  const does = (more: Partial<StepSigned>) => lacksOther(step({ second: 'does it', ...more }), doers);
  test('is not done by a doer alone', () => {
    expect(does({})).toBe(true);
    expect(does({ byId: 'piet' })).toBe(false);
    expect(does({ secondId: 'piet' })).toBe(false);
    expect(does({ byId: 'runa', secondId: 'runa' })).toBe(true);
  });
});

test('looking and holding are asked of nobody', () => {
  expect(lacksOther(step({ second: 'looks' }), doers)).toBe(false);
  expect(lacksOther(step({ second: 'holds', state: 'open' }), doers)).toBe(false);
});

test('doers are those who did steps, not those who drove it after', () => {
  const steps = [
    step({}),
    step({ byId: 'odile', state: 'not-needed' }),
    step({ byId: 'piet', second: 'does it' }),
    step({ byId: 'nessa', second: 'signs', secondId: 'piet' }),
  ];
  expect([...doersOf(steps)]).toEqual(['runa', 'nessa']);
});
