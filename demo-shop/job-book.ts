import { OUTPUT_SEAL } from './book/axles.ts';
import { SIX_MORE } from './book/six-more.ts';
import type { Story } from './story.ts';

/**
 * The ten jobs of the demo's book: six written besides the four it begins with, the swap tied to what goes with it, and a
 * draft that is not right yet, as somebody left it in the evening.
 */
export function jobBookOfTen(story: Story): void {
  story.scene(story.day(10, '17:10'), async () => {
    for (const content of SIX_MORE) await story.did('Piet', 'jobBook.save', { id: null, basedOn: 0, content });
  });
  story.scene(story.day(10, '17:20'), async () => {
    const rowOf = await bookRows(story);
    const swap = await story.did('Piet', 'jobBook.get', { id: rowOf('carrier') });
    const goesWith = [
      { bookJobId: rowOf(OUTPUT_SEAL.title), hoursLess: 300 },
      { bookJobId: rowOf('axle oil'), hoursLess: 0 },
    ];
    const after = [
      { source: 'run-in' as const, words: 'Change the run-in oil of the rear axle', days: 90, distance: 1000 },
    ];
    await story.did('Piet', 'jobBook.save', {
      ...{ id: swap.id, basedOn: swap.version },
      content: { ...swap.content, goesWith, after },
    });
  });
  story.scene(story.day(2, '17:30'), async () => {
    const rowOf = await bookRows(story);
    const { id, version, content } = await story.did('Piet', 'jobBook.get', { id: rowOf('Transfer case') });
    // The plugs stand in the wrong order, and the cover has no source.
    const [lift, fill, drain, ...rest] = content.steps;
    if (!lift || !fill || !drain) throw new Error('no plugs in the transfer case job');
    const steps = [lift, drain, fill, ...rest].map((step, at) => ({ ...step, n: at + 1 }));
    await story.did('Piet', 'jobBook.save', {
      ...{ id, basedOn: version, draft: true },
      content: { ...content, steps, bookHours: 3000, sourceOfFigures: '' },
    });
  });
}

/** The id of the job whose title has these words. */
async function bookRows(story: Story): Promise<(words: string) => string> {
  const { rows } = await story.did('Piet', 'jobBook.list', {});
  return (words) => {
    const row = rows.find(({ title }) => title.toLowerCase().includes(words.toLowerCase()));
    if (!row) throw new Error(`no ${words} in the job book`);
    return row.id;
  };
}
