import { formatQuantity, parseQuantity } from '../../../core/measure/quantity.ts';
import { Button } from '../../parts/Button.tsx';
import { Cell } from '../../parts/Cell.tsx';
import { act } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { weekdayName } from '../../words/times.ts';
import { unreadWords } from '../../words/unread.ts';
import { cellSaver } from './cell-saver.ts';
import { saidOfList } from './list-error.ts';
import { readPerson } from './read-person.ts';
import { type ShopRow, useSaved, useShopPage } from './setting.tsx';

type Person = ShopRow['people'][number];

const NONE = [0, 0, 0, 0, 0, 0, 0];
const DAY_MOST = 24_000;

/** Hours that a person is there, Monday to Sunday; capacity is reckoned from them. */
export function PersonWeek({ person }: { readonly person: Person }) {
  const { mayChange } = useShopPage();
  const writing = useWriting();
  const [wrong, say] = useSaved();
  const saver = (show: (row: Person) => string, read: (text: string, row: Person) => number[] | null | 'wrong') =>
    cellSaver<Person, { readonly week: number[] | null }>({
      row: person,
      show,
      read: (text, row) => {
        const week = read(text, row);
        return week === 'wrong' ? null : { week };
      },
      wrong: (text) => unreadWords(text, writing, t('terms.weekWrong')),
      send: (row, change) => act('person.change', { id: row.id, revision: row.revision, ...change }),
      fresh: () => readPerson(person.id),
      say: saidOfList,
    });
  const forget = async () =>
    say(
      await saver(
        () => '',
        () => null,
      )('', true),
    );
  return (
    <div className="shop-week">
      <span className="small ink-2">{t('terms.week')}</span>
      {NONE.map((_none, at) => {
        const show = (row: Person) => (row.week === null ? '' : formatQuantity(row.week[at] ?? 0, writing.decimal));
        const day = weekdayName(at + 1, writing);
        return (
          <div key={day} className="field">
            <span className="small ink-2">{day}</span>
            <Cell
              figure
              label={t('terms.weekOf', { name: person.name, day })}
              value={show(person)}
              readOnly={!mayChange}
              save={saver(show, (text, row) => {
                const hours = text.trim() === '' ? 0 : parseQuantity(text, writing);
                if (hours === null || hours < 0 || hours > DAY_MOST) return 'wrong';
                return (row.week ?? NONE).map((was, i) => (i === at ? hours : was));
              })}
            />
          </div>
        );
      })}
      {person.week === null ? (
        <p className="small ink-2">{t('terms.weekNone')}</p>
      ) : mayChange ? (
        <Button small onClick={() => void forget()}>
          {t('terms.weekForget')}
        </Button>
      ) : null}
      {wrong}
    </div>
  );
}
