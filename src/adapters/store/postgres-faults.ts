import { Fault } from '../../shop/store.ts';

/** Where a database is, without who asks and with what password: fit to be shown. */
export function shownUrl(url: string): string {
  try {
    const { hostname, port, pathname, searchParams } = new URL(url);
    const host = hostname || searchParams.get('host') || 'this machine';
    return `PostgreSQL at ${host}${port ? `:${port}` : ''}, database ${decodeURIComponent(pathname.slice(1)) || 'unnamed'}`;
  } catch {
    return 'PostgreSQL';
  }
}

/** Two transactions met, and one has to begin anew: nothing of it was kept. PostgreSQL, appendix A, classes 40 and 23. */
export const isToBeTriedAgain = (failure: unknown): boolean =>
  ['40001', '40P01', '23505'].includes((failure as { code?: string }).code ?? '');

const unreachable = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOTFOUND',
  'EAI_AGAIN',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'ETIMEDOUT',
  'ENOENT',
  'EPIPE',
]);

/** PostgreSQL's own codes (its manual, appendix A) and the network's in words that say what to do; our own mistakes stay as they are. */
export function worded(failure: unknown, url: string): unknown {
  if (failure instanceof Fault) return failure;
  const { code = '', message = '' } = failure as { code?: string; message?: string };
  const where = shownUrl(url);
  if (code === '53100' || code === '53200')
    return new Fault(
      'disk full',
      `the disk or the memory of ${where} is full: nothing was written; make room and try again`,
    );
  if (code === '25006')
    return new Fault('read only', `${where} takes no writing now: it is a standby, or was set so`);
  if (code === '42501')
    return new Fault(
      'read only',
      `${where} does not let this user do that (${message}); it needs CREATE on the database, or to own the schema "waywright"`,
    );
  if (code === '3D000')
    return new Fault(
      'unreachable',
      `${where} is not there; make it first (createdb), or put DATABASE_URL right`,
    );
  if (code.startsWith('28'))
    return new Fault(
      'unreachable',
      `${where} does not let this user in; put the user and the password in DATABASE_URL right`,
    );
  if (code.startsWith('XX00'))
    return new Fault(
      'damaged',
      `${where} says that its data is damaged (${message}); keep it as it is, and restore the last backup into a new database`,
    );
  if (code === '55P03' || code === '57014' || isToBeTriedAgain(failure))
    return new Fault('busy', `${where} is held by another program; nothing was written; send it again`);
  if (
    code.startsWith('08') ||
    code.startsWith('57P') ||
    code.startsWith('53') ||
    unreachable.has(code) ||
    /terminated|timeout|Connection ended|not queryable/i.test(message)
  )
    return new Fault(
      'unreachable',
      `${where} cannot be reached (${code || message}); what was not acknowledged is to be sent again`,
    );
  return failure;
}
