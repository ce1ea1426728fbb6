import { bodySchemas, refTo } from './bodies.ts';
import { type Bytes, type Described, described, rooms } from './routes.ts';

type Json = Readonly<Record<string, unknown>>;

const isBytes = (name: string): name is Bytes => name.includes('/');

const bytes: Readonly<Record<Bytes, Json>> = {
  'image/*': { schema: { type: 'string', contentMediaType: 'image/*' } },
  'application/zip': { schema: { type: 'string', contentMediaType: 'application/zip' } },
  'application/pdf': { schema: { type: 'string', contentMediaType: 'application/pdf' } },
  'text/event-stream': { schema: { type: 'string' } },
};

const content = (name: string): Json =>
  isBytes(name) ? { [name]: bytes[name] } : { 'application/json': { schema: refTo(name) } };

const response = (description: string, name: string): Json => ({ description, content: content(name) });

const parameters = (path: string, query: Described['query'] = {}): Json[] => [
  ...[...path.matchAll(/:([a-z]+)/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  })),
  ...Object.entries(query).map(([name, description]) => ({
    name,
    in: 'query',
    required: false,
    description,
    schema: { type: 'string' },
  })),
];

function operation({
  does,
  says,
  room,
  query,
  body,
  answer,
  status = undefined,
  again,
  refuses = {},
}: Described) {
  const path = does.split(' ')[1]!;
  const name = does
    .toLowerCase()
    .replace('/api/', '')
    .replace(/[^a-z]+/g, ' ')
    .trim()
    .replaceAll(' ', '-');
  const given = parameters(path, query);
  return {
    operationId: name,
    tags: [room],
    summary: says,
    ...(given.length ? { parameters: given } : {}),
    ...(body ? { requestBody: { required: true, content: content(body) } } : {}),
    responses: {
      ...(status ? { [status]: response('Done, and durable.', answer) } : {}),
      ...(!status || again
        ? { 200: response(again ? 'The very same was there already.' : 'Answered.', answer) }
        : {}),
      ...Object.fromEntries(
        Object.entries(refuses).map(([code, words]) => [
          code,
          response(words, code === '422' ? 'RefusedNoAnswer' : 'Refused'),
        ]),
      ),
      default: response('Refused, with the reason in words and every field that is wrong.', 'Refused'),
    },
  };
}

/** OpenAPI writes {id} where the server's router writes :id. */
export const openPath = (path: string): string => path.replace(/:([a-z]+)/g, '{$1}');

/**
 * The server's interface as an OpenAPI 3.1 document.
 * @param answers  JSON Schema of every answer, by the names of answers.ts, and of what they are made of
 */
export function openapi(version: string, answers: Readonly<Record<string, Json>>): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const route of described) {
    const [method, path] = route.does.split(' ') as [string, string];
    const at = openPath(path);
    paths[at] = { ...paths[at], [method.toLowerCase()]: operation(route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Waywright',
      version,
      summary: 'Worn machine slideways brought back to true by hand scraping.',
      description:
        'Every key ends in its unit: _mm, _um, _urad (1 µrad = 1 µm/m), _deg, _N, _kg. Signs and frame: docs/signs.md. Unknown keys are refused by name.',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: 'http://127.0.0.1:7117', description: 'this machine only, unless shared' }],
    tags: Object.entries(rooms).map(([name, description]) => ({ name, description })),
    security: [{}, { device: [] }],
    paths,
    components: {
      schemas: { ...answers, ...bodySchemas() },
      securitySchemes: {
        device: {
          type: 'apiKey',
          in: 'cookie',
          name: 'waywright-key',
          description:
            'Only from another device: the key that an invitation gives. At the machine itself nothing is asked.',
        },
      },
    },
  };
}

const named = (name: string | undefined): string =>
  name === undefined ? '' : isBytes(name) ? name : `\`${name}\``;

/** The table of docs/http.md. */
export function routesTable(): string {
  const rows = described.map(({ does, says, query, body, answer, status, again, refuses = {} }) => {
    const asked = Object.keys(query ?? {}).map((key) => `?${key}=`);
    const codes = Object.keys(refuses).join(', ');
    const well = status ? `${status}${again ? ', again 200' : ''}: ` : '';
    return [
      `${does}${asked.length ? `, ${asked.join(', ')}` : ''}`,
      says,
      named(body),
      `${well}${named(answer)}`,
      codes,
    ];
  });
  const head = [
    ['route', 'what it does', 'body', 'answer', 'refuses'],
    ['---', '---', '---', '---', '---'],
  ];
  return `${[...head, ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n')}\n`;
}
