// Writes docs/openapi.json: what is asked from the schemas that hold it, what is answered from the types that the server returns.
// Usage: npm run build && node scripts/openapi.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { createGenerator } from 'ts-json-schema-generator';
import { openapi, routesTable } from '../dist/faces/server/described/document.js';

const made = createGenerator({
  path: 'src/faces/server/described/answers.ts',
  tsconfig: 'tsconfig.json',
  type: 'Answers',
  topRef: false,
  expose: 'export',
  jsDoc: 'extended',
  encodeRefs: false,
  skipTypeCheck: true,
  additionalProperties: false,
}).createSchema('Answers');

/** Names of types may hold what a name of the document may not. */
const known = new Map();
const plain = (name) => {
  if (known.has(name)) return known.get(name);
  const short = name
    .replace(/alias-[\d-]+/g, '')
    .replace(/[^A-Za-z0-9.-]+/g, '_')
    .replace(/^_+|_+$/g, '');
  const taken = [...known.values()];
  let own = short;
  for (let k = 2; taken.includes(own); k++) own = `${short}_${k}`;
  known.set(name, own);
  return own;
};
const own = Object.entries(made.properties).filter(([name, { $ref }]) => $ref !== `#/definitions/${name}`);
for (const [name] of own)
  if (name in made.definitions)
    throw new Error(`${name} is the name of an answer and of another type: call the answer otherwise`);
const answers = { ...made.definitions, ...Object.fromEntries(own) };
const text = JSON.stringify(answers).replace(/"#\/definitions\/([^"]+)"/g, (_, name) =>
  JSON.stringify(`#/components/schemas/${plain(JSON.parse(`"${name}"`))}`),
);
const schemas = Object.fromEntries(
  Object.entries(JSON.parse(text)).map(([name, schema]) => [plain(name), newer(schema)]),
);

/** The generator writes lists of fixed length as draft 07 has them; OpenAPI 3.1 speaks 2020-12. */
function newer(schema) {
  if (Array.isArray(schema)) return schema.map(newer);
  if (schema === null || typeof schema !== 'object') return schema;
  const { items, additionalItems, ...rest } = schema;
  const said = Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, newer(value)]));
  if (items === undefined) return said;
  if (!Array.isArray(items)) return { ...said, items: newer(items) };
  return {
    ...said,
    prefixItems: newer(items),
    ...(additionalItems === undefined ? {} : { items: newer(additionalItems) }),
  };
}

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
writeFileSync('docs/openapi.json', `${JSON.stringify(openapi(version, schemas), null, 1)}\n`);
const page = readFileSync('docs/http.md', 'utf8');
writeFileSync(
  'docs/http.md',
  page.replace(/(<!-- routes: .*? -->\n)[\s\S]*?(<!-- end of routes -->)/, `$1${routesTable()}$2`),
);
console.log(`docs/openapi.json: ${Object.keys(openapi(version, schemas).paths).length} addresses`);
