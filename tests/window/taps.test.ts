import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { useSession } from '../../renderer/state/session.ts';
import { forgetTap, sendAgain, sendTaps, tap, useTaps } from '../../renderer/state/taps.ts';

interface Body {
  readonly operation: string;
  readonly input: { readonly at?: number; readonly touch?: number };
  readonly request: string;
}

/** What the shop answers, one after the other; 'away' where nobody does. */
type Answer = 'away' | 'ok' | { readonly code: string };

let sent: Body[] = [];
let answers: Answer[] = [];

beforeEach(() => {
  vi.useFakeTimers({ now: Date.parse('2026-03-10T08:00Z') });
  sent = [];
  answers = [];
  vi.stubGlobal('window', {});
  vi.stubGlobal('fetch', async (_path: string, { body }: { body: string }) => {
    const answer = answers.shift() ?? 'ok';
    if (answer === 'away') throw new TypeError('nobody there');
    sent.push(JSON.parse(body));
    return { json: async () => (answer === 'ok' ? { ok: true, output: {} } : { ok: false, error: answer }) };
  });
  useSession.setState({ person: { personId: 'runa', name: 'Runa', role: 'mechanic' } });
  useTaps.setState({ taps: [], away: false });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const bolt = (touch: number) => tap('torque.make', { jobId: 'j', step: 2, touch }, touch + 1);
const settle = () => vi.advanceTimersByTimeAsync(2000);

describe('taps', () => {
  test('go in in the order of tapping, each once under its own request, however often nobody answers', async () => {
    answers = ['away', 'away'];
    await bolt(0);
    await bolt(1);
    await bolt(2);
    expect(useTaps.getState().taps).toHaveLength(3);
    await settle();
    await settle();
    expect(sent.map((body) => body.input.touch)).toEqual([0, 1, 2]);
    expect(new Set(sent.map((body) => body.request)).size).toBe(3);
    expect(useTaps.getState()).toEqual({ taps: [], away: false });
  });

  test('that are late say when they were tapped', async () => {
    answers = Array.from({ length: 60 }, () => 'away');
    const tapped = Date.now();
    await bolt(0);
    await vi.advanceTimersByTimeAsync(61_000);
    answers = [];
    await settle();
    expect(sent.map((body) => body.input.at)).toEqual([tapped]);
  });

  test('that were taken without an answer, or whose clock is ahead, are sent as they were first', async () => {
    answers = Array.from({ length: 60 }, () => 'away');
    await bolt(0);
    await vi.advanceTimersByTimeAsync(61_000);
    answers = [{ code: 'bad-input' }, 'ok'];
    await settle();
    expect(sent.map((body) => 'at' in body.input)).toEqual([true, false]);
    expect(new Set(sent.map((body) => body.request)).size).toBe(1);
    expect(useTaps.getState().taps).toEqual([]);
  });

  test('that are refused stay with the reason and hold nothing else up; they are sent again or left out', async () => {
    answers = [{ code: 'held' }, 'ok'];
    await bolt(5);
    await tap('clock.off', {});
    await settle();
    const [refused] = useTaps.getState().taps;
    expect(useTaps.getState().taps).toHaveLength(1);
    expect(refused?.error).toEqual({ code: 'held' });
    answers = [{ code: 'held' }];
    sendAgain(refused?.place ?? 0);
    await settle();
    expect(sent.map((body) => body.operation)).toEqual(['torque.make', 'clock.off', 'torque.make']);
    expect(sent[2]?.request).toBe(sent[0]?.request);
    forgetTap(refused?.place ?? 0);
    expect(useTaps.getState().taps).toEqual([]);
  });

  test('of one person wait while another is at the window', async () => {
    answers = ['away'];
    await bolt(0);
    useSession.setState({ person: { personId: 'nessa', name: 'Nessa', role: 'mechanic' } });
    await sendTaps();
    await settle();
    expect(sent).toEqual([]);
    useSession.setState({ person: { personId: 'runa', name: 'Runa', role: 'mechanic' } });
    await sendTaps();
    expect(sent).toHaveLength(1);
  });

  test('wait where the door knows nobody any more', async () => {
    answers = [{ code: 'turned-away' }, 'ok'];
    await bolt(0);
    await settle();
    expect(sent).toHaveLength(2);
    expect(useTaps.getState().taps).toEqual([]);
  });
});
