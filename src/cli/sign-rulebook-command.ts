import { Command } from "commander";
import { z } from "zod";
import { utcDay } from "../base/index.js";
import { checkWritable, writeTogether } from "../disk/index.js";
import { checkMistakesText, countOf } from "../outputs/index.js";
import { SIGNATURE_FILE, type SignedBook, signatureText, textToSign } from "../rulebook/index.js";
import { checkRulebook } from "./check-rulebook.js";
import { rulebookPaths } from "./open-rulebook.js";
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
    overwrite: z.boolean().default(false),
  })
  .strict();

type SignOptions = z.infer<typeof OPTIONS>;

/** `spotface sign-rulebook`: puts a rulebook in force by a signature beside it, which others can ask for. */
export function signRulebookCommand(terminal: Terminal): Command {
  return new Command("sign-rulebook")
    .description(`sign a released rulebook: writes ${SIGNATURE_FILE} into its folder, for --trust of other commands`)
    .argument("<folder>", "rulebook folder; it must load, and every case must hold")
    .requiredOption("--key <file>", "private Ed25519 key (PEM); its passphrase from SPOTFACE_KEY_PASSPHRASE")
    .requiredOption("--says <words>", "who signs, and what the signature stands for; signed along")
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
  const rules = (await rulebookPaths(folder)).filter((path) => !path.endsWith(`/${SIGNATURE_FILE}`));
  const inputs = [...rules, options.key];
  if (rules.length === 0) return refuse(`${folder}: there is no folder with a rulebook; a commit cannot be signed`);
  for (const { path, text } of await checkWritable([target], inputs, options.overwrite)) {
    return refuse(`${path}: ${text}`);
  }
  const key = await readPrivateKey(options.key, process.env.SPOTFACE_KEY_PASSPHRASE);
  if (!key.ok) return refuse(`${key.path}: ${key.text}`);
  const book = await provenBook(folder, terminal);
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
async function provenBook(folder: string, terminal: Terminal): Promise<Omit<SignedBook, "says"> | null> {
  const settings = { coverage: false, alterations: false, since: null, trust: [], asOf: utcDay(terminal.now()) };
  const check = await checkRulebook(folder, settings);
  const wrong = check.mistakes.length + (check.cases?.wrong.length ?? 0);
  if (check.rulebook !== null && wrong === 0) {
    const { name, version, digest } = check.rulebook;
    return { name, version, digest };
  }
  terminal.err(checkMistakesText(check));
  const what = check.rulebook === null ? "mistake" : "case";
  terminal.err(
    `spotface: ${countOf(wrong, what)} to be put right before the rulebook can be signed; nothing was written\n`,
  );
  return null;
}
