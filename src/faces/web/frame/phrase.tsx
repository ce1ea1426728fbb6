import { Fragment } from 'react';
import type { Phrase } from '../../../shop/phrase.ts';

/** A sentence with its key words bold. */
export const Words = ({ phrase }: { readonly phrase: Phrase }) =>
  phrase.map((part, i) =>
    typeof part === 'string' ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a sentence have no other name than their place
      <Fragment key={i}>{part}</Fragment>
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: as above
      <b key={i}>{part.b}</b>
    ),
  );
