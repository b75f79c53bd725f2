import { partKey } from "../zip-directory.js";
import { xmlText } from "./cell-spelling.js";
import { TextChanges } from "./text-changes.js";
import { childrenNamed, type PartText, prefixOf } from "./xml-places.js";

export const WORKSHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
export const STYLES_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

/** Content type of a part: its own, else that of its ending; "" where neither is told. */
export function contentTypeOf(types: PartText, key: string): string {
  const own = childrenNamed(types.root, "Override").find(
    ({ attributes }) => partKey(attributes.PartName ?? "") === key,
  );
  const ending = key.slice(key.lastIndexOf(".") + 1);
  const usual = childrenNamed(types.root, "Default").find(
    ({ attributes }) => attributes.Extension?.toLowerCase() === ending,
  );
  return (own ?? usual)?.attributes.ContentType ?? "";
}

/** The list of content types with these parts added; names without a leading slash. */
export function withTypes(types: PartText, parts: readonly { readonly name: string; readonly type: string }[]): string {
  const changes = new TextChanges(types);
  const prefix = prefixOf(types.root.name);
  const items = parts.map(
    ({ name, type }) => `<${prefix}Override PartName="/${xmlText(name)}" ContentType="${type}"/>`,
  );
  changes.append(types.root, items.join(""));
  return changes.result();
}
