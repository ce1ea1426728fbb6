import { parseArgs } from 'node:util';

/** What the server is asked for on its command line. */
export interface Asked {
  readonly share: boolean;
  /** Files of the user's own certificate and its key, PEM. */
  /** The port it was told to listen on. */
  readonly port?: number;
  /** Only to be told what can be asked for. */
  readonly help?: true;
  readonly tls?: { readonly cert: string; readonly key: string };
}

/** What can be asked for, as the window shows it. */
export const askedHelp = `npm start                          the workshop as a page, on this machine only
npm start -- --port 8080           on a port of your own; else 7117, or the next that is free
npm start -- --share               let phones and tablets of the shop's network in, each by an invitation
npm start -- --share --cert FILE --key FILE   the same, enciphered with your own certificate (PEM)

The jobs are kept in the folder that WAYWRIGHT_DATA names, else in ./workshop. Stop with Ctrl+C.`;

/** Words of the command line. */
const options = {
  share: { type: 'boolean' },
  cert: { type: 'string' },
  key: { type: 'string' },
  port: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

const mostPort = 65_535;

/** A port as typed. @throws RangeError  naming where it was typed */
export function portOf(name: string, typed: string): number {
  const port = Number(typed);
  if (!/^\d+$/.test(typed) || port > mostPort)
    throw new RangeError(`${name}: ${JSON.stringify(typed)}; expected a whole number from 0 to ${mostPort}`);
  return port;
}

/** @throws RangeError  naming the word that is not known, or the file that is missing beside the other */
export function askedOf(words: readonly string[]): Asked {
  const { share = false, cert, key, port, help } = parsed(words);
  if ((cert === undefined) !== (key === undefined))
    throw new RangeError(
      `--${cert === undefined ? 'cert' : 'key'}: nothing; expected a file, since the other is given`,
    );
  return {
    share,
    ...(help ? { help: true as const } : {}),
    ...(port === undefined ? {} : { port: portOf('--port', port) }),
    ...(cert === undefined || key === undefined ? {} : { tls: { cert, key } }),
  };
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: false }).values;
  } catch (failure) {
    throw new RangeError(
      `${(failure as Error).message}; expected --port NUMBER, --share, --cert FILE --key FILE, --help, or nothing`,
    );
  }
}
