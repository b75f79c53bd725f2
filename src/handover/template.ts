import type { Name, Template, TemplatePart } from "./mapping.js";

/** A template, or what is wrong with it. */
export type TemplateReading =
  | { readonly ok: true; readonly template: Template }
  | { readonly ok: false; readonly text: string };

/** A name in a template: alone, or with the unit in which a number is to be written ("hole_depth in mm"). */
export type NameReader = (
  name: string,
  unit: string | null,
) => { readonly ok: true; readonly name: Name } | { readonly ok: false; readonly text: string };

const TOKEN = /\{\{|\}\}|\[\[|\]\]|\{([^{}]*)\}|[{}[\]]/g;

/**
 * Reads a template: fixed text, `{name}`, `{name in unit}`, and `[parts in brackets]`, which are not put into one
 * another; doubled braces and brackets stand for themselves. Nothing is ever computed.
 */
export function readTemplate(text: string, readName: NameReader): TemplateReading {
  const whole: TemplatePart[] = [];
  let optional: TemplatePart[] | null = null;
  let at = 0;
  const add = (part: TemplatePart): void => void (optional ?? whole).push(part);
  const addText = (piece: string): void => {
    if (piece !== "") add({ kind: "text", text: piece });
  };
  for (const match of text.matchAll(TOKEN)) {
    const [token, inner] = match;
    addText(text.slice(at, match.index));
    at = match.index + token.length;
    if (token.length === 2 && token[0] === token[1]) addText(token[0] ?? "");
    else if (inner !== undefined) {
      const [, name = "", unit = null] = /^\s*(\S+)(?:\s+in\s+(.*\S))?\s*$/.exec(inner) ?? [];
      const reading = readName(name, unit);
      if (!reading.ok) return reading;
      add({ kind: "name", name: reading.name });
    } else if (token === "[" && optional === null) optional = [];
    else if (token === "]" && optional !== null) {
      if (!optional.some((part: TemplatePart) => part.kind === "name")) {
        return { ok: false, text: "a part in brackets without a name is always there; leave the brackets out" };
      }
      whole.push({ kind: "optional", parts: optional });
      optional = null;
    } else return { ok: false, text: `the "${token}" has no partner; write it twice if it is meant as it stands` };
  }
  addText(text.slice(at));
  if (optional !== null)
    return { ok: false, text: 'the "[" has no partner; write it twice if it is meant as it stands' };
  return { ok: true, template: whole };
}

/** Every name in a template. */
export function namesIn(template: Template): readonly Name[] {
  return template.flatMap((part) =>
    part.kind === "name" ? [part.name] : part.kind === "optional" ? namesIn(part.parts) : [],
  );
}

/** A template with its names filled in, or the name that is empty and must not be. */
export type TemplateFilling =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly empty: Name };

/** @param word - a name in words; null where it is empty */
export function fillTemplate(template: Template, word: (name: Name) => string | null): TemplateFilling {
  let text = "";
  for (const part of template) {
    if (part.kind === "text") text += part.text;
    else if (part.kind === "optional") {
      const inner = fillTemplate(part.parts, word);
      if (inner.ok) text += inner.text;
    } else {
      const filled = word(part.name);
      if (filled === null) return { ok: false, empty: part.name };
      text += filled;
    }
  }
  return { ok: true, text };
}
