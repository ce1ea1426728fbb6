import { hostname, networkInterfaces } from 'node:os';

/** Names a browser on this machine may call the workshop by. Another name that leads here is a rebinding trick. */
const loopbackNames = ['127.0.0.1', 'localhost', '[::1]'];

/** Addresses of this machine on its networks, IPv4, loopback left out: where a phone finds it. */
export const networkAddresses = (): string[] =>
  Object.values(networkInterfaces()).flatMap((cards) =>
    (cards ?? []).flatMap((card) => (card.internal || card.family !== 'IPv4' ? [] : [card.address])),
  );

/** Without its port, small letters. */
export const hostName = (host: string): string => host.replace(/:\d+$/, '').toLowerCase();

/** A wireless network may give another address at any time. */
const lookAgain_ms = 5_000;

/** The names the workshop answers to: this machine's loopback names, and its own name and addresses when it is shared. */
export function ownNames(shared: boolean): (name: string) => boolean {
  let names = new Set<string>();
  let looked = Number.NEGATIVE_INFINITY;
  return (name) => {
    const now = performance.now();
    if (now - looked > lookAgain_ms) {
      looked = now;
      const own = hostname().toLowerCase();
      names = new Set([
        ...loopbackNames,
        ...(shared ? [own, `${own.split('.')[0]}.local`, ...networkAddresses()] : []),
      ]);
    }
    return names.has(name);
  };
}
