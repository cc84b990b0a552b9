import { useState } from 'react';
import { t } from '../words/t.ts';
import { readPhoto } from './photo-file.ts';

interface Props {
  readonly children: string;
  /** Told the picture as a data address. */
  readonly onPhoto: (address: string) => void;
}

/** The camera of the tablet, or a file: a plain file field, since a page on plain HTTP may not open the camera itself. */
export function TakePhoto({ children, onPhoto }: Props) {
  const [wrong, setWrong] = useState(false);
  const read = async (file: File | undefined) => {
    if (file === undefined) return;
    const address = await readPhoto(file);
    setWrong(address === null);
    if (address !== null) onPhoto(address);
  };
  return (
    <div className="take-photo">
      <label className="photo-add">
        {children}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          className="aloud"
          onChange={(event) => {
            void read(event.target.files?.[0]);
            // The same file may be taken again.
            event.target.value = '';
          }}
        />
      </label>
      {wrong ? (
        <p className="wrong-words" role="alert">
          {t('bay.noPhoto')}
        </p>
      ) : null}
    </div>
  );
}
