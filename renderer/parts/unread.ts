/**
 * Goes to the first field in view whose day or time cannot be read, where there is one: its sentence is shown, and whatever
 * was about to be done with the page is held. Nothing is sent with such a field left out.
 */
export function holdUnread(): boolean {
  const field = document.querySelector<HTMLInputElement>('input[data-unread]');
  field?.reportValidity();
  return field !== null;
}
