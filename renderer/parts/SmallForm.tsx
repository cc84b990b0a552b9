import type { ReactNode } from 'react';
import { Button } from './Button.tsx';

interface Props {
  /** A few fields. */
  readonly children: ReactNode;
  /** The verb on the button that sends them; Enter in a field does the same. */
  readonly verb: string;
  readonly onSend: () => unknown;
  readonly busy: boolean;
  /** The button is as high as the page's others. */
  readonly big?: boolean;
  /** What the button says aloud, where its verb alone does not say of what. */
  readonly said?: string;
  /** Why it was not done, under the fields. */
  readonly wrong?: ReactNode;
  /** The way out of it; then the fields stand one under the other, and the buttons in a line below. */
  readonly leave?: { readonly words: string; readonly onLeave: () => void };
  readonly look?: 'row-form' | 'contact-draft' | 'privacy-open';
  readonly id?: string;
  readonly name?: string;
}

/** A reason or a few fields, and the one button that does it. A day that cannot be read holds it, by the browser's own check. */
export function SmallForm(props: Props) {
  const { children, verb, onSend, busy, big = false, said, wrong, leave, id, name } = props;
  const send = (
    <Button small={!big} type="submit" disabled={busy} {...(said === undefined ? {} : { label: said })}>
      {verb}
    </Button>
  );
  return (
    <form
      id={id}
      aria-label={name}
      className={props.look ?? (leave === undefined ? 'row-form' : 'contact-draft')}
      onSubmit={(event) => {
        event.preventDefault();
        void onSend();
      }}
    >
      {children}
      {leave === undefined ? (
        send
      ) : (
        <div className="contact-acts">
          {send}
          <Button small={!big} onClick={leave.onLeave}>
            {leave.words}
          </Button>
        </div>
      )}
      {wrong}
    </form>
  );
}
