// Which tests run how? Two projects: the inside alone is quick; the browser's tests run one after another.
import { defineConfig } from "vitest/config";

const browser = ["tests/{sheets,cli,pdf,site}/**/*.test.ts"];

export default defineConfig({
  test: {
    testTimeout: 30_000,
    setupFiles: ["tests/support/seed.ts"],
    projects: [
      { extends: true, test: { name: "inside", include: ["tests/**/*.test.ts"], exclude: browser } },
      {
        extends: true,
        test: { name: "browser", include: browser, testTimeout: 180_000, hookTimeout: 240_000, fileParallelism: false },
      },
    ],
    coverage: {
      provider: "v8",
      include: ["src/**/*.ts"],
      // These run inside a browser's page, in a thread and in a process of their own, where nothing is counted: tests/pdf,
      // tests/site and tests/cli call them there.
      exclude: ["src/pdf/measure.ts", "src/site/search-client.ts", "src/cli/shard-worker.ts", "src/cli/main.ts"],
      reporter: ["text-summary"],
      // What is true today, so that nothing falls behind it. Most branches that are missing are answers to "what if this index were
      // not there?", which the compiler asks for and no input reaches.
      thresholds: {
        lines: 98,
        branches: 88,
        "src/{geometry,mechanics,sources,tables}/**": { lines: 100, branches: 100 },
        "src/units/**": { lines: 99, branches: 93 },
        "src/stock/**": { lines: 99, branches: 82 },
        "src/{job,packet,plan}/**": { lines: 98, branches: 87 },
        "src/drawing/**": { lines: 100, branches: 90 },
      },
    },
  },
});
