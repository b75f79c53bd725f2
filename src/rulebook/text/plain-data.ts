import { isMap, isScalar, isSeq, type Node, type Pair, type Scalar } from "yaml";
import { showText } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";
import type { FileLimits } from "./file-limits.js";
import { below, type Spot, type Spots, type YamlReading } from "./source.js";

/** Keys that could reach behind the data in some program that reads it. */
const REFUSED_KEYS: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype", "<<"]);

const DECIMAL = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?$/i;

// biome-ignore lint/suspicious/noControlCharactersInRegex: characters that cannot be seen or that turn text around
const UNSEEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]|\p{Surrogate}/u;

/**
 * Turns parsed nodes into plain data and notes the place of every key and value. The caller has limited the depth,
 * so this may recurse.
 */
export function takePlainData(
  path: string,
  contents: Node | null,
  limits: FileLimits,
  spotAt: (offset: number) => Spot,
): YamlReading {
  const taking = new Taking(path, limits, spotAt);
  const data = taking.take(contents, "", null, 0);
  if (taking.findings.length > 0) return { ok: false, findings: taking.findings };
  if (data === null && contents === null) {
    return {
      ok: false,
      findings: [
        { file: path, line: 1, column: 1, code: "empty-file", text: "the file is empty; it must hold a mapping" },
      ],
    };
  }
  return { ok: true, source: { path, data, spots: taking.spots } };
}

class Taking {
  readonly findings: FileFinding[] = [];
  readonly spots = new Map<string, Spots>();
  readonly #path: string;
  readonly #limits: FileLimits;
  readonly #spotAt: (offset: number) => Spot;

  constructor(path: string, limits: FileLimits, spotAt: (offset: number) => Spot) {
    this.#path = path;
    this.#limits = limits;
    this.#spotAt = spotAt;
  }

  /** `around` is the offset of the key or mapping around it, for a value that is left out. */
  take(node: unknown, pointer: string, key: Spot | null, around: number): unknown {
    const offset = offsetOf(node) ?? around;
    const bare = isScalar(node) && node.type === "PLAIN" && typeof node.value === "string";
    this.spots.set(pointer, { key, value: this.#spotAt(offset), ...(bare ? { bareText: true } : {}) });
    if (isMap(node)) return this.#takeMapping(node.items, pointer, offset);
    if (isSeq(node)) {
      if (node.items.length > this.#limits.listLength) {
        const most = this.#limits.listLength;
        this.#refuse(
          offset,
          "list-too-long",
          `a list of ${node.items.length} items, at most ${most} are allowed; shorten it`,
        );
        return [];
      }
      return node.items.map((item, index) => this.take(item, below(pointer, index), null, offset));
    }
    return isScalar(node) ? this.#takeScalar(node, offset) : null;
  }

  #takeMapping(pairs: readonly Pair[], pointer: string, offset: number): unknown {
    if (pairs.length > this.#limits.keys) {
      const most = this.#limits.keys;
      this.#refuse(offset, "too-many-keys", `a mapping of ${pairs.length} keys, at most ${most} are allowed; split it`);
      return {};
    }
    const entries = new Map<string, unknown>();
    for (const pair of pairs) {
      const at = offsetOf(pair.key) ?? offset;
      const name = isScalar(pair.key) ? pair.key.value : undefined;
      if (typeof name !== "string") {
        this.#refuse(at, "bad-key", "a key must be text; put numbers, true, false and null in quotes");
      } else if (REFUSED_KEYS.has(name)) {
        this.#refuse(at, "refused-key", `the key "${name}" is not allowed; leave it out`);
      } else if (entries.has(name)) {
        this.#refuse(at, "duplicate-key", `the key "${showText(name)}" stands here twice; keep one of them`);
      } else {
        this.#checkText(name, at);
        entries.set(name, this.take(pair.value, below(pointer, name), this.#spotAt(at), at));
      }
    }
    return Object.fromEntries(entries);
  }

  #takeScalar(node: Scalar, offset: number): unknown {
    if (typeof node.value === "string") this.#checkText(node.value, offset);
    if (typeof node.value === "number") this.#checkNumber(node.value, node.source ?? "", offset);
    return node.value;
  }

  #checkText(text: string, offset: number): void {
    const most = this.#limits.textLength;
    if (text.length > most) {
      this.#refuse(
        offset,
        "text-too-long",
        `a text of ${text.length} characters, at most ${most} are allowed; shorten it`,
      );
    } else if (UNSEEN.test(text)) {
      this.#refuse(
        offset,
        "unseen-character",
        `the text "${showText(text)}" holds a character that cannot be seen; remove it`,
      );
    }
  }

  #checkNumber(value: number, written: string, offset: number): void {
    const exact = !Number.isInteger(value) || Number.isSafeInteger(value);
    if (Number.isFinite(value) && exact && DECIMAL.test(written)) return;
    const found = `"${showText(written)}" is not a finite decimal number`;
    this.#refuse(offset, "not-decimal", `${found}; write it with digits and a decimal point, or put text in quotes`);
  }

  #refuse(offset: number, code: string, text: string): void {
    this.findings.push({ file: this.#path, ...this.#spotAt(offset), code, text });
  }
}

function offsetOf(node: unknown): number | null {
  if (!isMap(node) && !isSeq(node) && !isScalar(node)) return null;
  return node.range?.[0] ?? null;
}
