// Writes the published JSON Schema of the project file: npx tsx tests/tools/writeSchema.ts
import { writeFileSync } from "node:fs";
import { projectJsonSchema } from "../../src/core/project/file/jsonSchema.ts";

const target = new URL("../../shared/project.schema.json", import.meta.url);
writeFileSync(target, `${JSON.stringify(projectJsonSchema(), null, 2)}\n`);
