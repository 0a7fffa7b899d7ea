// Which tests must notice a changed formula? Those of the formulas themselves and those of their published sources.
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    testTimeout: 20_000,
    setupFiles: ["tests/support/seed.ts"],
    include: ["tests/{units,geometry,mechanics,stock,validation}/**/*.test.ts"],
    // These ask the whole plan: they notice much and take long.
    exclude: ["tests/validation/hand/**", "tests/validation/ncc-2022.test.ts"],
  },
});
