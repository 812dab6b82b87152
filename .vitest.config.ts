import { defineConfig } from "vitest/config";

const node = { environment: "node" as const };

export default defineConfig({
  test: {
    ...node,
    reporters: ["default"],
    globalSetup: ["tests/tools/freshBuild.ts"],
    setupFiles: ["tests/tools/fuzzSeed.ts"],
    coverage: {
      provider: "v8",
      include: ["src/core/**/*.ts"],
      exclude: ["**/*.test.ts"],
      reporter: ["text-summary"],
      reportsDirectory: "coverage",
      // Just below what all tests together reach.
      thresholds: { statements: 96, branches: 91, functions: 95, lines: 97 },
    },
    projects: [
      { extends: true, test: { name: "unit", include: ["src/**/*.test.ts"], testTimeout: 60_000 } },
      { extends: true, test: { name: "property", include: ["tests/property/**/*.test.ts"], testTimeout: 60_000 } },
      { extends: true, test: { name: "golden", include: ["tests/golden/**/*.test.ts"], testTimeout: 60_000 } },
      { extends: true, test: { name: "house", include: ["tests/house/**/*.test.ts"], testTimeout: 240_000 } },
      { extends: true, test: { name: "outside", include: ["tests/outside/**/*.test.ts"], testTimeout: 120_000 } },
      {
        extends: true,
        test: {
          name: "e2e",
          include: ["tests/e2e/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          // Named at the end of the run, which fails when they are more than a few (tests/tools/verdict.ts).
          retry: 1,
        },
      },
    ],
  },
});
