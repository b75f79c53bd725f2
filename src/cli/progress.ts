import { Presets, SingleBar } from "cli-progress";
import type { Terminal } from "./terminal.js";

/** Shows how far a long piece of work has come. */
export interface Progress {
  /** @param share - 0 to 1 */
  at(share: number): void;
  end(): void;
}

const SILENT: Progress = { at: () => {}, end: () => {} };

/** A bar on a person's terminal, nothing anywhere else. */
export function progressOf(terminal: Terminal, what: string): Progress {
  if (!terminal.interactive) return SILENT;
  const bar = new SingleBar(
    { format: `${what} [{bar}] {percentage} %`, clearOnComplete: true, hideCursor: true, stream: process.stderr },
    Presets.legacy,
  );
  bar.start(100, 0);
  return { at: (share) => bar.update(Math.round(share * 100)), end: () => bar.stop() };
}
