import { defineConfig } from "vitest/config";

/** Tests that put another file system in place of Node's, which must be theirs alone. */
const ALONE = ["tests/disk/broken-off.test.ts", "tests/cli/failing-disk.test.ts"];
const COMMON = { testTimeout: 60_000 };

export default defineConfig({
  test: {
    // Left to itself the runner keeps a processor free, which on two of them is half.
    maxWorkers: "100%",
    projects: [
      {
        test: {
          ...COMMON,
          name: "shared",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/full/**", ...ALONE],
          // Files in one process share the loaded program, which halves the time of the whole.
          isolate: false,
        },
      },
      { test: { ...COMMON, name: "alone", include: ALONE } },
    ],
  },
});
