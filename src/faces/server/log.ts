import { type FastifyInstance, type FastifyServerOptions, LogController } from 'fastify';

const levels = ['silent', 'error', 'warn', 'info'] as const;

/**
 * Structured lines on standard error, one JSON object each, without a word of what people wrote: no bodies, no addresses, no
 * titles or ids. A request is told by its route's pattern. `WAYWRIGHT_LOG`: silent, error, warn (as when left out) or info, which
 * tells each request.
 */
export function logging(
  env: { readonly WAYWRIGHT_LOG?: string } = process.env,
  stream: { write(line: string): void } = process.stderr,
): FastifyServerOptions {
  const level = levels.find((one) => one === env.WAYWRIGHT_LOG) ?? 'warn';
  return {
    logController: new LogController({ disableRequestLogging: true }),
    logger: {
      level,
      stream,
      // Neither the machine's name nor the process number says anything of use here.
      base: null,
      hooks: {
        // An error alone would lend the line its message.
        logMethod(given, write) {
          const [first] = given as unknown[];
          if (first instanceof Error) write.call(this, { err: first }, 'failed');
          else write.apply(this, given);
        },
      },
      serializers: {
        req: () => ({}),
        res: () => ({}),
        // A message may quote what was sent; where it broke is told by the code's own lines.
        err: (failure: Error & { code?: string }) => ({
          type: failure.name,
          message: '',
          code: failure.code ?? '',
          stack: (failure.stack ?? '')
            .split('\n')
            .filter((line) => /^\s+at /.test(line))
            .join('\n'),
        }),
      },
    },
  };
}

/** Tells each request once it is answered: how, which route, with what, after how long. */
export function tellRequests(app: FastifyInstance): void {
  app.addHook('onResponse', async (request, reply) => {
    request.log.info(
      {
        method: request.method,
        route: request.routeOptions.url ?? 'none',
        status: reply.statusCode,
        ms: Math.round(reply.elapsedTime * 10) / 10,
      },
      'answered',
    );
  });
}
