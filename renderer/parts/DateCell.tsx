import { Cell, type CellProps } from './Cell.tsx';
import { useDays } from './use-days.ts';

/** A cell with a day in it, with `moment` a day and a time of it: typed and shown as the shop does, 'YYYY-MM-DD' to its giver. */
export function DateCell({ moment = false, ...cell }: CellProps & { readonly moment?: boolean }) {
  const { read, show } = useDays(moment);
  const shown = show(cell.value);
  return (
    <Cell
      {...cell}
      value={shown}
      onTyping={(text) => cell.onTyping?.(text === shown ? cell.value : text)}
      save={async (text, over) => {
        const got = read(text);
        if ('words' in got) return { ok: false, words: got.words };
        const saved = await cell.save(got.value, over);
        return saved.ok || saved.meanwhile === undefined ? saved : { ...saved, meanwhile: show(saved.meanwhile) };
      }}
    />
  );
}
