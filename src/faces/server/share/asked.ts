import { parseArgs } from 'node:util';

/** What the server is asked for on its command line. */
export interface Asked {
  readonly share: boolean;
  /** Files of the user's own certificate and its key, PEM. */
  readonly tls?: { readonly cert: string; readonly key: string };
}

/** @throws RangeError  naming the word that is not known, or the file that is missing beside the other */
export function askedOf(words: readonly string[]): Asked {
  const options = { share: { type: 'boolean' }, cert: { type: 'string' }, key: { type: 'string' } } as const;
  let values: { share?: boolean | undefined; cert?: string | undefined; key?: string | undefined };
  try {
    ({ values } = parseArgs({ args: [...words], options, allowPositionals: false }));
  } catch (failure) {
    throw new RangeError(
      `${(failure as Error).message}; expected --share, --cert FILE --key FILE, or nothing`,
    );
  }
  const { share = false, cert, key } = values;
  if ((cert === undefined) !== (key === undefined))
    throw new RangeError(
      `--${cert === undefined ? 'cert' : 'key'}: nothing; expected a file, since the other is given`,
    );
  return cert === undefined || key === undefined ? { share } : { share, tls: { cert, key } };
}
