import type { WorkbookPackage } from "./package.js";
import { passXml } from "./xml-pass.js";
import { partKey } from "./zip-directory.js";

/** A link from one part to another. */
export interface Relationship {
  readonly id: string;
  /** Last word of its type, lower case: "worksheet", "sharedstrings". The same in both families of namespaces. */
  readonly type: string;
  /** Key of the part it leads to, or null if it leads out of the file. Nothing outside is ever fetched. */
  readonly target: string | null;
}

/**
 * The links of a part; "" stands for the package itself. A part without links has none.
 *
 * @param key - key of the part as made by `partKey`
 * @throws Unreadable if the list is damaged
 */
export async function readRelationships(source: WorkbookPackage, key: string): Promise<readonly Relationship[]> {
  const slash = key.lastIndexOf("/") + 1;
  const part = await source.part(`${key.slice(0, slash)}_rels/${key.slice(slash)}.rels`, "other");
  if (!part) return [];
  const found: Relationship[] = [];
  passXml(part, {
    open(name, attributes) {
      if (name !== "Relationship") return false;
      const { Id: id = "", Type: type = "", Target: target = "", TargetMode: mode = "" } = attributes;
      const outside = mode.toLowerCase() === "external";
      found.push({
        id,
        type: type.slice(type.lastIndexOf("/") + 1).toLowerCase(),
        target: outside ? null : resolveTarget(key, target),
      });
      return false;
    },
    close() {},
  });
  return found;
}

/** Key of the part that a target written in another part leads to; null if it climbs out of the package. */
function resolveTarget(fromKey: string, target: string): string | null {
  const path = unescaped(target).replace(/\\/g, "/");
  const steps = path.startsWith("/") ? [] : fromKey.split("/").slice(0, -1);
  for (const step of path.split("/")) {
    if (step === "" || step === ".") continue;
    if (step !== "..") steps.push(step);
    else if (steps.pop() === undefined) return null;
  }
  return partKey(steps.join("/"));
}

function unescaped(target: string): string {
  const path = target.split(/[?#]/, 1)[0] ?? "";
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
