/** What a subcommand may touch of the world outside; tests hand in their own. */
export interface Terminal {
  /** Results; waits until the reader of the output has taken them. */
  out(text: string): Promise<void>;
  /** Remarks and progress. */
  err(text: string): void;
  /** 0 done, 1 done and something reached the level asked about, 2 could not run. */
  setExitCode(code: 0 | 1 | 2): void;
  /** Whether remarks go to a person's terminal, so that a progress bar makes sense. */
  readonly interactive: boolean;
  /** Runs a last duty when the user breaks the run off; the answer takes it back. */
  onInterrupt(duty: () => Promise<void>): () => void;
  /** The moment that "today" is taken from. */
  now(): Date;
}

/** Ways in which a person or the system breaks a run off. */
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/** The terminal of the process. */
export const processTerminal: Terminal = {
  out: (text) =>
    new Promise((resolve, reject) => {
      process.stdout.write(text, (error) => (error ? reject(error) : resolve()));
    }),
  err: (text) => {
    process.stderr.write(text);
  },
  setExitCode: (code) => {
    process.exitCode = code;
  },
  interactive: process.stderr.isTTY === true,
  onInterrupt: (duty) => {
    const handler = (): void => {
      void duty().finally(() => process.exit(130));
    };
    for (const signal of SIGNALS) process.once(signal, handler);
    return () => {
      for (const signal of SIGNALS) process.off(signal, handler);
    };
  },
  now: () => new Date(),
};
