import type { TextFile } from "../../base/index.js";
import { type RoledFile, type RoleMistake, roleInFolder, stepsInside } from "../text/file-roles.js";

/**
 * The role of a file of an overlay folder, a mistake, or null for a file that is none of its data. What a site adds
 * stands as in a rulebook, but for its rules, which stand in `rules/`; what it changes stands in `changes/`.
 *
 * @param root - folder that every path begins with; empty where paths begin at the manifest
 */
export function overlayRoleOf(file: TextFile, root: string): RoledFile | RoleMistake | null {
  const found = stepsInside(file, root);
  if (found === null || "code" in found) return found;
  const { inside, steps, name } = found;
  const [folder = "", ...rest] = steps;
  if (rest.length === 0) return atTop(file, inside, name);
  if (folder === "words") {
    const text = "the words of a site are given with --words; move the file out of the overlay";
    return { code: "words-in-overlay", text };
  }
  if (folder === "rules") {
    if (rest.length === 2) return { role: "rule", file, inside, name };
    const text = "a rule of the site stands in rules/<topic>/; put the file into a folder named after its topic";
    return { code: "no-topic", text };
  }
  const role = folder === "changes" ? "change" : roleInFolder(folder);
  if (role === undefined) {
    const text =
      "an overlay has changes/, rules/<topic>/, models/, conditions/, tables/, groups/ and measuring/; move the file into one of them";
    return { code: "unknown-folder", text };
  }
  if (rest.length > 1) {
    return { code: "nested-folder", text: `folders inside ${folder}/ are not read; put the file into ${folder}/` };
  }
  return { role, file, inside, name };
}

function atTop(file: TextFile, inside: string, name: string): RoledFile | RoleMistake {
  if (name === "overlay") return { role: "overlay", file, inside, name };
  if (name === "rulebook") {
    const text = "an overlay has no rulebook.yaml; write overlay.yaml, or give a whole rulebook with --rules";
    return { code: "manifest-of-rulebook", text };
  }
  return {
    code: "no-topic",
    text: "only overlay.yaml stands here; changes stand in changes/, rules in rules/<topic>/",
  };
}
