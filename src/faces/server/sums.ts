import type { FastifyPluginAsync } from 'fastify';
import { alongInput, isAlong } from '../../contract/along.ts';
import { kitQuestion } from '../../contract/kit.ts';
import { lineInput } from '../../contract/line.ts';
import { partsInput } from '../../contract/parts.ts';
import { plateInput } from '../../contract/plate.ts';
import { restInput } from '../../contract/rest.ts';
import { siteInput } from '../../contract/site.ts';
import { steerInput } from '../../contract/steer.ts';
import { sumQuestion } from '../../contract/sums.ts';
import { caseInput } from '../../contract/worked-case.ts';
import type { Compute } from '../../shop/compute.ts';
import { whenGone } from './gone.ts';
import { sendNoAnswer } from './refusals.ts';

/** The contract's verbs over HTTP: the same input and the same output as the command line. */
export const sumRoutes =
  (compute: Compute): FastifyPluginAsync =>
  async (app) => {
    app.post('/api/steer', async (request, reply) => {
      const answer = await compute('steer', steerInput(caseInput(request.body)), whenGone(reply));
      return answer.ok ? answer : sendNoAnswer(reply, answer);
    });
    app.post('/api/line', async (request, reply) => {
      const asked = caseInput(request.body);
      return isAlong(asked)
        ? compute('along', alongInput(asked), whenGone(reply))
        : compute('line', lineInput(asked), whenGone(reply));
    });
    app.post('/api/plate', async (request, reply) =>
      compute('plate', plateInput(caseInput(request.body)), whenGone(reply)),
    );
    app.post('/api/kit/report', async (request, reply) =>
      compute('kit', kitQuestion(request.body), whenGone(reply)),
    );
    app.post('/api/sums', async (request, reply) =>
      compute('sum', sumQuestion(request.body), whenGone(reply)),
    );
    app.post('/api/rest', async (request, reply) => {
      const answer = await compute('rest', restInput(caseInput(request.body)), whenGone(reply));
      return answer.ok ? answer : sendNoAnswer(reply, answer);
    });
    app.post('/api/site', async (request, reply) => {
      const answer = await compute('site', siteInput(caseInput(request.body)), whenGone(reply));
      return answer.ok ? answer : sendNoAnswer(reply, answer);
    });
    app.post('/api/parts', async (request, reply) => {
      const answer = await compute('parts', partsInput(caseInput(request.body)), whenGone(reply));
      return answer.ok ? answer : sendNoAnswer(reply, answer);
    });
  };
