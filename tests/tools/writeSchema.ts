// Writes the published JSON Schemas of the project, workshop, plan and cupboard files: npx tsx tests/tools/writeSchema.ts
import { writeFileSync } from "node:fs";
import { cupboardJsonSchema } from "../../src/core/cupboard/cupboardFile.ts";
import { planJsonSchema } from "../../src/core/job/planDocument/planSchema.ts";
import { projectJsonSchema, workshopJsonSchema } from "../../src/core/project/file/jsonSchema.ts";

write("project.schema.json", projectJsonSchema());
write("workshop.schema.json", workshopJsonSchema());
write("plan.schema.json", planJsonSchema());
write("cupboard.schema.json", cupboardJsonSchema());

function write(name: string, schema: object): void {
  const target = new URL(`../../shared/${name}`, import.meta.url);
  writeFileSync(target, `${JSON.stringify(schema, null, 2)}\n`);
}
