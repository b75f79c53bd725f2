import { Option } from "commander";
import { z } from "zod";

/** Overlay folders as they come from the command line, the lowest first. */
export const OVER = z.array(z.string()).default([]);

/** `--over`, or another name for one side of a comparison; may be given again. */
export function overOption(name = "--over", where = "over the rulebook"): Option {
  const what = `folder of a site to lay ${where}; repeatable, later ones over earlier ones`;
  return new Option(`${name} <folder>`, what).argParser((folder: string, before: readonly string[] = []) => [
    ...before,
    folder,
  ]);
}
