import type { RoledFile } from "./file-roles.js";
import type { Report, Source } from "./source.js";

/** A file whose text could be read; `fits` says whether it also has the form of its role. */
export interface LoadedFile extends RoledFile {
  readonly source: Source;
  readonly report: Report;
  readonly fits: boolean;
}
