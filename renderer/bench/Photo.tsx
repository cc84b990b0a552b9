import { useAsk } from '../state/use-ask.ts';
import { t } from '../words/t.ts';

/** A photo of the shop, drawn when its bytes are here. */
export function Photo({ id, words }: { readonly id: string; readonly words: string }) {
  const photo = useAsk('photo.read', { id }).data;
  if (photo === undefined) return <div className="photo-coming" />;
  return (
    <img
      src={`data:image/${photo.kind};base64,${photo.base64}`}
      alt={words === '' ? t('bay.photoNoWords') : words}
      loading="lazy"
    />
  );
}
