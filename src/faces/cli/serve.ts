import { about } from './about.ts';
import { refused } from './doors.ts';
import { exitCodes, Leave } from './leave.ts';
import type { Register } from './run.ts';

/** Starts the server with words of its own, and answers with its exit code when it ends. */
export type StartServer = (words: readonly string[], port?: string) => Promise<number>;

interface Options {
  readonly share?: true;
  readonly cert?: string;
  readonly key?: string;
  readonly port?: string;
}

const isPort = (given: string): boolean => /^\d{1,5}$/.test(given) && Number(given) <= 65_535;

/** `waywright serve`: the workshop as a page, on this machine only or for the devices of the shop. */
export const registerServe =
  (start: StartServer): Register =>
  (program, doors) => {
    program
      .command('serve')
      .description(about.serve)
      .option('--share', 'let phones and tablets on this network in, each by an invitation (docs/sharing.md)')
      .option('--cert <file>', 'your own certificate, PEM: what passes is enciphered')
      .option('--key <file>', 'the key of that certificate, PEM')
      .option('--port <number>', 'a port; left out, the usual one or the next that is free')
      .action(async ({ share, cert, key, port }: Options) => {
        if (port !== undefined && !isPort(port))
          refused(doors, `--port: ${JSON.stringify(port)}; expected a whole number from 0 to 65535`);
        if ((cert === undefined) !== (key === undefined))
          refused(
            doors,
            `${cert === undefined ? '--cert' : '--key'}: nothing; expected a PEM file, since the other is given`,
          );
        const words = [
          ...(share ? ['--share'] : []),
          ...(cert === undefined ? [] : ['--cert', cert]),
          ...(key === undefined ? [] : ['--key', key]),
        ];
        const code = await start(words, port);
        if (code !== exitCodes.answered) throw new Leave(code);
      });
  };
