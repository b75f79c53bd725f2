import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/full/**"],
    testTimeout: 60_000,
    // Left to itself the runner keeps a processor free, which on two of them is half.
    maxWorkers: "100%",
  },
});
