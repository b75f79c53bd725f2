import { type FactDefinition, findFact } from "../../../facts/index.js";
import type { JsonSchema } from "../parts.js";
import { keyInWords, WORDS } from "./editor-words.js";
import { factInWords } from "./fact-words.js";

/** A word of ours in a list of facts, and the prefix that a file leaves out. */
const MODEL = "model.";

/**
 * A schema for editors, from the one that files are checked by: it allows the same, explains every key and every word of
 * a list, and offers one form beside the other where the checking one chooses, since editors complete from all of them.
 * `description` and `enumDescriptions` are what the YAML and JSON language servers show; other programs pass the latter over.
 */
export function editorSchema(schema: JsonSchema): JsonSchema {
  return asMapping(explained(schema, null));
}

/** Where a schema stands: title of the mapping around it, and key. */
interface Standing {
  readonly title: string;
  readonly key: string;
}

function explained(schema: unknown, at: Standing | null): unknown {
  if (Array.isArray(schema)) return schema.map((one) => explained(one, null));
  if (typeof schema !== "object" || schema === null) return schema;
  const own = asMapping(schema);
  if ("if" in own && "then" in own && "else" in own) return described(offered(own, at), at);
  const done = Object.fromEntries(
    Object.entries(own).map(([keyword, part]) => [keyword, keywordExplained(keyword, part, own)]),
  );
  return described({ ...done, ...wordsExplained(own), ...formExplained(own) }, at);
}

function keywordExplained(keyword: string, part: unknown, own: JsonSchema): unknown {
  if (keyword === "properties" || keyword === "definitions") {
    const title = keyword === "properties" ? String(own.title ?? "") : "";
    return Object.fromEntries(
      Object.entries(asMapping(part)).map(([key, inner]) => [
        key,
        keyword === "properties" ? explained(inner, { title, key }) : explained(inner, null),
      ]),
    );
  }
  // These hold data or tests, and no schema that an editor shows.
  if (["enum", "required", "if", "const", "propertyNames"].includes(keyword)) return part;
  return typeof part === "object" ? explained(part, null) : part;
}

/** One form or another, chosen by a test, as a choice of forms; each of them shuts out what the others allow. */
function offered(schema: JsonSchema, at: Standing | null): JsonSchema {
  const { if: _, then: yes, else: no, ...rest } = schema;
  // The usual form comes first: where none fits, editors speak of the first.
  const forms = [no, yes].flatMap((form) => {
    const done = asMapping(explained(form, null));
    const { anyOf, ...others } = done;
    return Array.isArray(anyOf) && Object.keys(others).length === 0 ? anyOf : [done];
  });
  return { ...asMapping(explained(rest, at)), anyOf: forms };
}

function described(schema: JsonSchema, at: Standing | null): JsonSchema {
  if (at === null) return schema;
  const fact = findFact(at.key) ?? findFact(`${MODEL}${at.key}`);
  const isFact = fact !== undefined && !(at.title in NOT_FACTS);
  const words = isFact ? factInWords(fact) : (schema.description ?? keyInWords(at.title, at.key));
  const withChoices = isFact ? choicesOffered(schema, fact, at.title) : schema;
  return words === null ? withChoices : { ...withChoices, description: words };
}

/** Mappings whose keys may have the name of a fact and are none. */
const NOT_FACTS: Readonly<Record<string, true>> = { rule: true, "file of deviations": true, deviation: true };

/** Where a value of a fact is given or stated, its choices. */
function choicesOffered(schema: JsonSchema, { kind, choices }: FactDefinition, title: string): JsonSchema {
  if (kind !== "choice" || (title !== "given facts" && title !== "stated facts")) return schema;
  const { title: own, description, ...form } = schema;
  return { ...(own === undefined ? {} : { title: own }), description, anyOf: [{ enum: choices }, form] };
}

/** What the words of a closed list mean; of facts, what they are. */
function wordsExplained({ enum: words, title }: JsonSchema): JsonSchema {
  if (!Array.isArray(words)) return {};
  const list = WORDS[String(title)];
  const said = words.map((word) => {
    const fact = findFact(String(word));
    return list?.[String(word)] ?? (fact && String(title).endsWith("fact") ? factInWords(fact) : null);
  });
  return said.some((one) => one === null) ? {} : { enumDescriptions: said };
}

/** What is expected of a text of a certain form, where an editor would show the pattern. */
function formExplained({ pattern, $comment }: JsonSchema): JsonSchema {
  return pattern === undefined || $comment === undefined ? {} : { patternErrorMessage: `expected ${$comment}` };
}

function asMapping(schema: unknown): JsonSchema {
  return typeof schema === "object" && schema !== null ? (schema as JsonSchema) : {};
}
