import { useState } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { t } from '../words/t.ts';

interface Props {
  readonly warnings: OutputOf<'shop.get'>['warnings'];
}

/** What the start found about where the shop is kept, on every place until somebody says that it was seen. */
export function Warnings({ warnings }: Props) {
  const [seen, setSeen] = useState<readonly string[]>([]);
  return warnings
    .filter(({ what }) => !seen.includes(what))
    .map(({ what, with: figures }) => (
      <Notice
        key={what}
        action={
          <Button small onClick={() => setSeen([...seen, what])}>
            {t('warnings.seen')}
          </Button>
        }
      >
        {t(`warnings.${what}`, figures)}
      </Notice>
    ));
}
