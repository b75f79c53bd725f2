import type { Terminal } from "../../src/cli/terminal.js";

/** A terminal that keeps what is said on it. */
export interface FakeTerminal extends Terminal {
  readonly said: { out: string; err: string; code: 0 | 1 | 2 };
}

/** A terminal of 25 November 2026 that nobody sits at. */
export function fakeTerminal(): FakeTerminal {
  const said: FakeTerminal["said"] = { out: "", err: "", code: 0 };
  return {
    said,
    out: async (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    setExitCode: (code) => {
      said.code = code;
    },
    interactive: false,
    onInterrupt: () => () => {},
    now: () => new Date("2026-11-25T12:00:00Z"),
  };
}
