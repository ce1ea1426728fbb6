import { z } from 'zod';
import { alongSchemas } from '../../../contract/along.ts';
import { axisSchema } from '../../../contract/axis.ts';
import { chartFileSchema } from '../../../contract/chart.ts';
import { chartHow } from '../../../contract/chart-asked.ts';
import { entrySchema, planSchema, sentSchema } from '../../../contract/entry.ts';
import { gibSchema } from '../../../contract/gib.ts';
import { heightsKept, heightsOfChain, heightsOnMachine } from '../../../contract/heights.ts';
import { jobFileSchema } from '../../../contract/job-file.ts';
import { kitSchema } from '../../../contract/kit.ts';
import { kitFileSchema, sentKitSchema } from '../../../contract/kit-entry.ts';
import { lineSchemas } from '../../../contract/line.ts';
import { machineShape } from '../../../contract/machine.ts';
import { newJobSchema } from '../../../contract/new-job.ts';
import { progressFile } from '../../../contract/order.ts';
import { partsSchema } from '../../../contract/parts-schema.ts';
import { plateSchemas } from '../../../contract/plate.ts';
import { newPracticeSchema, practiceTurnSchema } from '../../../contract/practice.ts';
import { printSchema } from '../../../contract/print.ts';
import { benchSchema, rebuildSchema } from '../../../contract/rebuild.ts';
import { restSchema } from '../../../contract/rest.ts';
import { invitationSchema, joinSchema } from '../../../contract/share.ts';
import { siteSchema } from '../../../contract/site.ts';
import { slideSchema } from '../../../contract/slide.ts';
import { steerSchema } from '../../../contract/steer.ts';
import { sumSchema } from '../../../contract/sums.ts';

const chartWhole = chartFileSchema.extend(chartHow.shape);

/** What the server is asked with, by the name that the description gives it: the very schemas that hold each body. */
const bodies = {
  AskedSteer: steerSchema,
  AskedRest: restSchema,
  AskedSite: siteSchema,
  AskedParts: partsSchema,
  AskedLine: z.union([lineSchemas.angles, lineSchemas.heights, ...Object.values(alongSchemas)]),
  AskedPlate: z.union(Object.values(plateSchemas)),
  AskedKit: kitSchema,
  AskedSum: sumSchema,
  AskedOrder: z.union([machineShape, progressFile]),
  AskedHeights: z.union([heightsOnMachine, heightsOfChain]),
  AskedJobHeights: heightsKept,
  AskedAxis: axisSchema,
  AskedGib: gibSchema,
  AskedChart: chartWhole,
  AskedJobChart: chartWhole.partial(),
  AskedPrint: printSchema,
  AskedCorners: printSchema.pick({ size: true }),
  AskedMachine: machineShape,
  NewJob: newJobSchema,
  NewPractice: newPracticeSchema,
  NewRebuild: rebuildSchema,
  NewBench: benchSchema,
  PracticeTurn: practiceTurnSchema,
  SentEntry: sentSchema,
  SentJobFile: jobFileSchema,
  SentKitEntry: sentKitSchema,
  SentKitFile: kitFileSchema,
  Invitation: invitationSchema,
  Join: joinSchema,
  Empty: z.strictObject({}),
} as const;

/** Shapes that many of them hold, so that each stands once. */
const parts = { SentSlide: slideSchema, SentPlan: planSchema, StoredEntry: entrySchema };

export type BodyName = keyof typeof bodies;

type JsonSchema = Readonly<Record<string, unknown>>;

/** Where a described shape stands in the document. */
export const refTo = (name: string): JsonSchema => ({ $ref: `#/components/schemas/${name}` });

/** Every body as JSON Schema (2020-12), each under its name. Rules that a schema's own checks hold are not in it: those are told in words. */
export function bodySchemas(): Readonly<Record<string, JsonSchema>> {
  const registry = z.registry<{ id: string }>();
  const named: [string, z.ZodType][] = Object.entries({ ...parts, ...bodies });
  // One schema may go by two names; its first is kept, and the second refers to it.
  const first = new Map<z.ZodType, string>();
  for (const [id, schema] of named)
    if (!first.has(schema)) {
      first.set(schema, id);
      registry.add(schema, { id });
    }
  const { schemas } = z.toJSONSchema(registry, {
    io: 'input',
    unrepresentable: 'any',
    uri: (id) => `#/components/schemas/${id}`,
  });
  return Object.fromEntries(
    named.map(([id, schema]) => {
      const own = first.get(schema)!;
      if (own !== id) return [id, refTo(own)];
      const { $schema: _, $id: __, ...rest } = schemas[id]!;
      return [id, rest];
    }),
  );
}
