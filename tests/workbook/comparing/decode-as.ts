import * as codePages from "@e965/xlsx/dist/cpexcel.full.mjs";

// The types of the module say that the decoder hangs on its tables; in the module itself it stands beside them.
const { utils } = codePages as unknown as { readonly utils: typeof codePages.cptable.utils };

/** Code pages by the names that the index of the collection uses. */
const CODE_PAGES: ReadonlyMap<string, number> = new Map([
  ["utf-8", 65_001],
  ["utf-8-sig", 65_001],
  ["utf-16-le", 1_200],
  ["cp1252", 1_252],
  ["mac-roman", 10_000],
]);

/** Text in the named encoding by code page tables that are not ours and not those of Node. */
export function decodeAs(encoding: string, bytes: Uint8Array): string {
  const page = encoding === "utf-16" ? (bytes[0] === 0xff ? 1_200 : 1_201) : CODE_PAGES.get(encoding);
  if (page === undefined) throw new RangeError(`no code page is known for ${encoding}`);
  const text = utils.decode(page, bytes);
  return text.replace(/^\uFEFF/, "");
}
