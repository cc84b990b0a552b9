import { type HTMLAttributes, type ReactNode, type Ref, useEffect, useId } from 'react';
import { t } from '../words/t.ts';
import { DateField } from './DateField.tsx';
import { TimeField } from './TimeField.tsx';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange?: (text: string) => void;
  /** On leaving. */
  readonly onLeave?: () => void;
  /** What is wrong and what would be right. */
  readonly error?: string | null;
  /** Filled in for the person, from there: dashed until it is changed. */
  readonly filledFrom?: string | null;
  readonly note?: ReactNode;
  readonly placeholder?: string;
  readonly type?: 'text' | 'password' | 'tel' | 'email' | 'date' | 'time' | 'datetime-local' | 'number';
  /** Of a day: only the past makes sense, so that without its year it is the last such day. */
  readonly past?: boolean;
  readonly inputMode?: HTMLAttributes<HTMLInputElement>['inputMode'];
  readonly lines?: number;
  /** The customer's own words: set in italic. */
  readonly said?: boolean;
  readonly figure?: boolean;
  readonly readOnly?: boolean;
  readonly required?: boolean;
  /** For a page that opens for one thing. */
  readonly autoFocus?: boolean;
  readonly autoComplete?: string;
  readonly maxLength?: number;
  /** id of a datalist to pick from. */
  readonly list?: string;
  readonly ref?: Ref<HTMLInputElement>;
}

/** A label with a field under it; what does not fit is said below, under an oxide rule. */
export function Field(props: Props) {
  const {
    label,
    value,
    onChange,
    onLeave,
    error,
    filledFrom,
    note,
    lines,
    said = false,
    figure = false,
    readOnly = false,
  } = props;
  const id = useId();
  const wantsFocus = props.autoFocus === true;
  useEffect(() => {
    if (wantsFocus) document.getElementById(id)?.focus();
  }, [wantsFocus, id]);
  const wrong = error !== undefined && error !== null && error !== '';
  const filled = filledFrom !== undefined && filledFrom !== null;
  const about = [wrong ? `${id}-error` : '', note === undefined ? '' : `${id}-note`].join(' ').trim();
  const look = [
    'in',
    filled ? 'filled' : '',
    wrong ? 'wrong' : '',
    readOnly ? 'frozen' : '',
    said ? 'said' : '',
    figure ? 'figure' : '',
  ]
    .filter((word) => word !== '')
    .join(' ');
  const shared = {
    id,
    className: look,
    value,
    readOnly,
    required: props.required,
    placeholder: props.placeholder,
    autoComplete: props.autoComplete ?? 'off',
    maxLength: props.maxLength,
    'aria-invalid': wrong || undefined,
    'aria-describedby': about === '' ? undefined : about,
    onBlur: onLeave,
  };
  const moment = props.type === 'datetime-local';
  const Pick = props.type === 'date' || moment ? DateField : props.type === 'time' ? TimeField : null;
  return (
    <div className="field">
      <label htmlFor={id} id={`${id}-label`}>
        {label}
        {filled ? <span className="ink-3"> {t('parts.filledFrom', { source: filledFrom })}</span> : null}
      </label>
      {Pick !== null ? (
        <Pick
          id={id}
          label={label}
          className={look}
          value={value}
          onChange={onChange}
          onLeave={onLeave}
          readOnly={readOnly}
          required={props.required}
          invalid={wrong}
          describedBy={shared['aria-describedby']}
          ref={props.ref}
          moment={moment}
          past={props.past === true}
        />
      ) : lines === undefined ? (
        <input
          {...shared}
          ref={props.ref}
          type={props.type ?? 'text'}
          inputMode={props.inputMode}
          list={props.list}
          onChange={(event) => onChange?.(event.target.value)}
        />
      ) : (
        <textarea {...shared} rows={lines} onChange={(event) => onChange?.(event.target.value)} />
      )}
      {wrong ? (
        <p className="wrong-words" id={`${id}-error`} role="alert">
          {error}
        </p>
      ) : null}
      {note === undefined ? null : (
        <p className="field-note" id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
}
