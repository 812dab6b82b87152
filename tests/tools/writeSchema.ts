// Writes the published JSON Schemas of the project and plan files: npx tsx tests/tools/writeSchema.ts
import { writeFileSync } from "node:fs";
import { planJsonSchema } from "../../src/core/job/planDocument/planSchema.ts";
import { projectJsonSchema } from "../../src/core/project/file/jsonSchema.ts";

write("project.schema.json", projectJsonSchema());
write("plan.schema.json", planJsonSchema());

function write(name: string, schema: object): void {
  const target = new URL(`../../shared/${name}`, import.meta.url);
  writeFileSync(target, `${JSON.stringify(schema, null, 2)}\n`);
}
