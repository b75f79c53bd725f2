import { defineConfig } from "vitest/config";
import { SkippedLast } from "./tests/full/skipped-last.js";

/** The slow tests: other programs, other versions of Node, the package as installed. Run by `npm run test:full`. */
export default defineConfig({
  test: {
    include: ["tests/full/**/*.test.ts"],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 300_000,
    reporters: ["default", new SkippedLast()],
  },
});
