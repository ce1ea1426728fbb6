import { renderUnicodeCompact } from 'uqr';
import { joinLinks, type ShareParts } from './routes.ts';

/** What the terminal says when the workshop is shared: where it is, and one invitation as a QR code. */
export async function shareText(
  { invitations, scheme, addresses }: ShareParts,
  port: number,
): Promise<string> {
  const reached = addresses();
  if (reached.length === 0)
    return 'This machine is on no network just now, so no phone can reach it. The page “Share” shows an address as soon as it is.';
  const made = await invitations.make('writer');
  const [link] = joinLinks(made, scheme, reached, port);
  const clear =
    scheme === 'http'
      ? '\nNothing on its way is enciphered: share on a network you trust, or start with --cert FILE --key FILE.'
      : '';
  return `
Shared on this network at ${reached.map((one) => `${scheme}://${one}:${port}`).join(' and ')}
One phone or tablet may come in to read and write, once, within ten minutes. Point its camera here:

${renderUnicodeCompact(link!, { border: 2 })}

or open the address there and type the code ${made.code}. More devices: the page “Share” on this machine.${clear}`;
}
