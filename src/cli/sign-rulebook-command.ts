import { existsSync } from "node:fs";
import { join } from "node:path";
import { Command } from "commander";
import { z } from "zod";
import { utcDay } from "../base/index.js";
import { checkWritable, writeTogether } from "../disk/index.js";
import { checkMistakesText, countOf } from "../outputs/index.js";
import { SIGNATURE_FILE, type SignedBook, signatureText, textToSign } from "../rulebook/index.js";
import { checkRulebook } from "./check-rulebook.js";
import { openRulebook, rulebookPaths } from "./open-rulebook.js";
import { OVER, overOption } from "./over-option.js";
import { optionMistakes } from "./screen-options.js";
import { fingerprintOf, readPrivateKey, signText } from "./signing-keys.js";
import type { Terminal } from "./terminal.js";

const OPTIONS = z
  .object({
    key: z.string(),
    says: z
      .string()
      .regex(/^[^\n\r]*\S[^\n\r]*$/, "say in one line who signs, and what the signature stands for")
      .max(400, "expected at most 400 characters"),
    rules: z.string().optional(),
    over: OVER,
    overwrite: z.boolean().default(false),
  })
  .strict();

type SignOptions = z.infer<typeof OPTIONS>;

const OVERLAY_MANIFESTS = ["overlay.yaml", "overlay.yml", "overlay.json"];

/** `spotface sign-rulebook`: puts a rulebook in force by a signature beside it, which others can ask for. */
export function signRulebookCommand(terminal: Terminal): Command {
  return new Command("sign-rulebook")
    .description(`sign a released rulebook: writes ${SIGNATURE_FILE} into its folder, for --trust of other commands`)
    .argument(
      "<folder>",
      "rulebook folder, or one that is laid over a rulebook; it must load, and every case must hold",
    )
    .requiredOption("--key <file>", "private Ed25519 key (PEM); its passphrase from SPOTFACE_KEY_PASSPHRASE")
    .requiredOption("--says <words>", "who signs, and what the signature stands for; signed along")
    .option(
      "--rules <folder>",
      "rulebook over which a signed folder lies (default: the one that comes with the program)",
    )
    .addOption(overOption("--over", "between the two"))
    .option("--overwrite", "replace the signature that is there already")
    .action(async (folder: string, raw: unknown) => {
      const options = OPTIONS.safeParse(raw);
      if (options.success) terminal.setExitCode((await signFolder(folder, options.data, terminal)) ? 0 : 2);
      else {
        terminal.err(optionMistakes(options.error));
        terminal.setExitCode(2);
      }
    });
}

async function signFolder(folder: string, options: SignOptions, terminal: Terminal): Promise<boolean> {
  const refuse = (text: string): false => {
    terminal.err(`spotface: ${text}\n`);
    return false;
  };
  const target = `${folder.replace(/(?<=.)[/\\]+$/, "")}/${SIGNATURE_FILE}`;
  const rules = (await rulebookPaths(folder, [])).filter((path) => !path.endsWith(`/${SIGNATURE_FILE}`));
  const inputs = [...rules, options.key];
  if (rules.length === 0) return refuse(`${folder}: there is no folder with a rulebook; a commit cannot be signed`);
  for (const { path, text } of await checkWritable([target], inputs, options.overwrite)) {
    return refuse(`${path}: ${text}`);
  }
  const key = await readPrivateKey(options.key, process.env.SPOTFACE_KEY_PASSPHRASE);
  if (!key.ok) return refuse(`${key.path}: ${key.text}`);
  const book = await provenBook(folder, options, terminal);
  if (book === null) return false;
  const signed: SignedBook = { ...book, says: options.says.trim() };
  const signature = { ...signed, key: fingerprintOf(key.key), signature: signText(textToSign(signed), key.key) };
  const written = await writeTogether([{ path: target, data: signatureText(signature) }], {
    inputs,
    overwrite: options.overwrite,
  });
  if (!written.ok) return refuse(`${written.error.path}: ${written.error.text}`);
  await terminal.out(
    `Signed: ${book.name} ${book.version}\ndigest ${book.digest}\nkey    ${signature.key}\nWritten: signature: ${target}\n`,
  );
  return true;
}

/** The rulebook, if it loads and every case holds; nobody signs what is known to be wrong. */
async function provenBook(
  folder: string,
  options: SignOptions,
  terminal: Terminal,
): Promise<Omit<SignedBook, "says"> | null> {
  const isOverlay = OVERLAY_MANIFESTS.some((name) => existsSync(join(folder, name)));
  if (!isOverlay && (options.rules !== undefined || options.over.length > 0)) {
    terminal.err("spotface: --rules and --over are for a folder that lies over a rulebook; leave them out\n");
    return null;
  }
  const book = isOverlay ? (options.rules ?? null) : folder;
  const over = isOverlay ? [...options.over, folder] : [];
  const asOf = utcDay(terminal.now());
  const check = await checkRulebook(book, { over, coverage: false, alterations: false, since: null, trust: [], asOf });
  const wrong = check.mistakes.length + (check.cases?.wrong.length ?? 0);
  if (check.rulebook !== null && wrong === 0) {
    const opened = isOverlay ? await openRulebook(book, over) : null;
    const overlay = opened?.ok ? opened.rulebook.overlays.at(-1) : undefined;
    const { name, version, digest } = overlay ?? check.rulebook;
    return { name, version, digest };
  }
  terminal.err(checkMistakesText(check));
  const what = check.rulebook === null ? "mistake" : "case";
  terminal.err(
    `spotface: ${countOf(wrong, what)} to be put right before the rulebook can be signed; nothing was written\n`,
  );
  return null;
}
