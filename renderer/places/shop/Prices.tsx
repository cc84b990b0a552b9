import { OutsideMarkup } from './OutsideMarkup.tsx';
import { PartsMarkup } from './PartsMarkup.tsx';

/** What is offered where a cost is known: parts by bands of cost, outside work by a share with a limit. */
export function Prices() {
  return (
    <>
      <PartsMarkup />
      <OutsideMarkup />
    </>
  );
}
