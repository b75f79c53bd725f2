import { Composer, type CST, type Document, LineCounter, Parser } from "yaml";
import type { TextFile } from "../../base/index.js";
import type { FileLimits } from "./file-limits.js";
import { takePlainData } from "./plain-data.js";
import type { Spot, YamlReading } from "./source.js";
import { wordYamlError } from "./yaml-errors.js";
import { checkTokens, findUnclosed } from "./yaml-tokens.js";

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that no file of ours may hold
const NOT_TEXT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/;

/**
 * Reads one YAML 1.2 (or JSON) file as plain data with places. Aliases, anchors, tags, directives, merge keys,
 * keys that stand twice and further documents are refused, as is anything beyond the limits. Nothing in the text
 * can make it run code or recurse without end: nesting is measured on the tokens, before anything is built.
 */
export function readYaml(file: TextFile, limits: FileLimits): YamlReading {
  const text = file.text.startsWith("\ufeff") ? file.text.slice(1) : file.text;
  const refuse = (spot: Spot, code: string, words: string): YamlReading => ({
    ok: false,
    findings: [{ file: file.path, ...spot, code, text: words }],
  });
  if (text.length > limits.fileLength) {
    const found = `the file has ${text.length} characters, at most ${limits.fileLength} are allowed; split or shorten it`;
    return refuse({ line: 1, column: 1 }, "file-too-long", found);
  }
  const lines = new LineCounter();
  const spotAt = (offset: number): Spot => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const strange = NOT_TEXT.exec(text);
  if (strange) {
    const words = "the file is not plain text here; save it as UTF-8 without control characters";
    return refuse(spotAt(strange.index), "not-plain-text", words);
  }
  const oldBreak = text.search(/\r(?!\n)/);
  if (oldBreak >= 0) {
    const words = "a line ends in CR alone here, which YAML readers take for no end; save the file with LF or CR LF";
    return refuse(spotAt(oldBreak), "old-line-end", words);
  }
  const trouble = checkTokens(tokens, limits.depth);
  if (trouble) return refuse(spotAt(trouble.offset), trouble.code, trouble.text);
  const composed = compose(tokens);
  if (!composed) return refuse({ line: 1, column: 1 }, "empty-file", "the file is empty; it must hold a mapping");
  const [error] = composed.errors;
  if (error) {
    const unclosed = findUnclosed(tokens);
    if (unclosed) return refuse(spotAt(unclosed.offset), unclosed.code, unclosed.text);
    const mistake = wordYamlError(error.code, text, error.pos[0]);
    return refuse(spotAt(mistake.offset), "not-yaml", mistake.text);
  }
  return takePlainData(file.path, composed.contents, limits, spotAt);
}

function compose(tokens: readonly CST.Token[]): Document.Parsed | undefined {
  const composer = new Composer({
    version: "1.2",
    schema: "core",
    merge: false,
    uniqueKeys: false,
    logLevel: "silent",
  });
  for (const document of composer.compose(tokens)) return document;
  return undefined;
}
