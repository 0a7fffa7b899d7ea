import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    testTimeout: 30_000,
    projects: [
      {
        extends: true,
        test: { name: "inside", exclude: ["tests/sheets/**", "tests/cli/**", "tests/pdf/**"] },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/{sheets,cli,pdf}/**/*.test.ts"],
          testTimeout: 180_000,
          hookTimeout: 240_000,
          fileParallelism: false,
        },
      },
    ],
    coverage: { provider: "v8", include: ["src/**/*.ts"], reporter: ["text-summary"] },
  },
});
