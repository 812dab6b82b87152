import { z } from "zod";
import { planJsonSchema } from "../../core/job/planDocument/planSchema.ts";
import { CUT_MODES } from "../../core/lay/search/engine.ts";
import { expected, group, plainNumber } from "../../core/project/file/fields.ts";
import { projectJsonSchema } from "../../core/project/file/jsonSchema.ts";
import { LANGUAGES } from "../../core/words/words.ts";
import { OUTPUTS } from "../../export/outputs.ts";

/** How a job stands. */
const STATES = ["waiting", "laying", "laid", "left-out", "failed", "cancelled"] as const;

export type JobState = (typeof STATES)[number];

const OUTPUT_IDS = OUTPUTS.map(({ id }) => id);
const text = z.string();
const number = z.number();
const count = z.int().min(0);

/** What is asked for: a project to lay, the same as `lay --effort`. What is wrong with it is told as that of a file. */
export function wishSchema(mostEffort: number) {
  return group({
    /** Checked by the program itself, which tells every problem of it at once. */
    project: z.record(text, z.unknown(), expected("group")),
    effort: plainNumber(0.001, mostEffort).default(0.2),
    seed: z
      .int(expected("count"))
      .min(0)
      .max(2 ** 31 - 1)
      .default(1),
    cut: z.enum(CUT_MODES).default("free"),
    /** Kinds of files beside the plan; all of them unless told. */
    write: z.array(z.enum(OUTPUT_IDS), expected("list")).optional(),
    lang: z.enum(LANGUAGES).default("en"),
  });
}

const problems = z.object({
  problems: z.array(z.object({ code: text, path: text, message: text })),
});

const progress = z.object({
  cloth: count,
  cloths: count,
  materialId: text,
  lengthMm: number,
  leftOut: count,
  evaluations: count,
});

const link = text.describe("path below the address of the service");

export const job = z.object({
  id: text,
  state: z.enum(STATES),
  ahead: count.describe("jobs before it, while it waits"),
  progress: progress.nullable().describe("the best plan so far of the cloth under work"),
  problems: z.array(text).describe("why it failed, or what was left out and not written, in sentences"),
  figures: z
    .object({
      lengthMm: number,
      use: number,
      gap: number.nullable(),
      toPay: number.nullable(),
      currency: text,
    })
    .nullable()
    .describe("taken off rolls, all cloths together; pieces ÷ cloth; over the proven least; to pay"),
  files: z.array(z.object({ name: text, sha256: text, href: link })),
  links: z.object({ self: link, events: link, plan: link.nullable() }),
});

export type JobData = z.infer<typeof job>;

const health = z.object({ laywright: text, waiting: count, laying: count });

type Schemas = Record<string, unknown>;

/** One schema as a part of the document: what stands in its `$defs` becomes parts of their own under its name. */
function addSchema(schemas: Schemas, name: string, schema: object): void {
  const { $defs = {}, $schema: _, $id: __, ...own } = schema as { $defs?: Schemas; $schema?: string; $id?: string };
  const nameOf = (part: string): string => `${name}.${part.replace(/[^\w.-]/gu, "-")}`;
  const moved = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(moved);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, part]) => {
        const target =
          key === "$ref" && typeof part === "string" ? /^#\/\$defs\/(.+)$/u.exec(part)?.[1] : undefined;
        return [key, target === undefined ? moved(part) : `#/components/schemas/${nameOf(target)}`];
      }),
    );
  };
  schemas[name] = moved(own);
  for (const [part, of] of Object.entries($defs)) schemas[nameOf(part)] = moved(of);
}

const ref = (name: string): object => ({ $ref: `#/components/schemas/${name}` });
const answer = (description: string, name: string): object => ({
  description,
  content: { "application/json": { schema: ref(name) } },
});
const PROBLEMS = (description: string): object => answer(description, "Problems");
const id = { name: "id", in: "path", required: true, schema: { type: "string" } };

/** What the service does, as OpenAPI 3.1; its schemas are those that requests are read with. */
export function openApi(version: string, mostEffort: number, needsToken: boolean): object {
  const schemas: Schemas = {};
  const jsonSchema = (schema: z.ZodType, io: "input" | "output"): object => z.toJSONSchema(schema, { io });
  addSchema(schemas, "Project", projectJsonSchema());
  addSchema(schemas, "Plan", planJsonSchema());
  addSchema(schemas, "Problems", jsonSchema(problems, "output"));
  addSchema(schemas, "Job", jsonSchema(job, "output"));
  addSchema(schemas, "Health", jsonSchema(health, "output"));
  addSchema(schemas, "Wish", jsonSchema(wishSchema(mostEffort), "input"));
  const wish = schemas["Wish"] as { properties: Schemas };
  wish.properties["project"] = ref("Project");
  const refused = { "401": PROBLEMS("no token, or a wrong one"), "404": PROBLEMS("there is no such job or file") };
  return {
    openapi: "3.1.0",
    info: {
      title: "Laywright",
      version,
      description:
        "Lays projects out. Plans have passed the checker. Straps are never load rated; rotary cutters, irons and solvents ask for the usual caution, and local rules come first.",
    },
    paths: {
      "/health": { get: { operationId: "health", responses: { "200": answer("it runs", "Health") } } },
      "/jobs": {
        post: {
          operationId: "layProject",
          requestBody: { required: true, content: { "application/json": { schema: ref("Wish") } } },
          responses: {
            "202": answer("taken; lays as soon as those before it are done", "Job"),
            "400": PROBLEMS("the project or the wish has problems: all of them"),
            "401": refused["401"],
            "413": PROBLEMS("the request is too large"),
            "415": PROBLEMS("the request is no application/json"),
            "503": PROBLEMS("too many jobs wait; try again later"),
          },
        },
      },
      "/jobs/{id}": {
        parameters: [id],
        get: { operationId: "job", responses: { "200": answer("how it stands", "Job"), ...refused } },
        delete: {
          operationId: "cancelJob",
          responses: { "204": { description: "ended, its files are gone" }, ...refused },
        },
      },
      "/jobs/{id}/events": {
        parameters: [id],
        get: {
          operationId: "jobEvents",
          responses: {
            "200": {
              description: "an event `job` with the job as data at once, at each change, and the last at its end",
              content: { "text/event-stream": { schema: { type: "string" } } },
            },
            ...refused,
          },
        },
      },
      "/jobs/{id}/plan": {
        parameters: [id],
        get: { operationId: "jobPlan", responses: { "200": answer("the plan file", "Plan"), ...refused } },
      },
      "/jobs/{id}/files/{name}": {
        parameters: [id, { name: "name", in: "path", required: true, schema: { type: "string" } }],
        get: {
          operationId: "jobFile",
          responses: {
            "200": { description: "the file", content: { "application/octet-stream": { schema: {} } } },
            ...refused,
          },
        },
      },
    },
    components: {
      schemas,
      ...(needsToken ? { securitySchemes: { token: { type: "http", scheme: "bearer" } } } : {}),
    },
    security: needsToken ? [{ token: [] }] : [],
  };
}
