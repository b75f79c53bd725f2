import { execFileSync } from "node:child_process";
import { createPublicKey, generateKeyPairSync, verify } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { screenFiles } from "../../src/index.js";
import { temporaryFolders } from "../disk/temporary-folder.js";
import { GOOD_CASES, wallRule } from "../proving/small-rule.js";
import { smallFiles } from "../rulebook/small-book.js";
import { resultOf, runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const freshFolder = temporaryFolders();

/** A folder with a small rulebook and two pairs of keys beside it. */
function signersDesk() {
  const folder = freshFolder();
  const book = join(folder, "book");
  const own = {
    "hole/thread-depth.yaml": null,
    "speed/slow.yaml": null,
    "conditions/outdoors.yaml": null,
    "seat/thin-wall.yaml": wallRule(GOOD_CASES),
  };
  for (const { path, text } of smallFiles(own)) {
    mkdirSync(dirname(join(book, path)), { recursive: true });
    writeFileSync(join(book, path), text);
  }
  const keys = (name: string) => {
    const { privateKey, publicKey } = generateKeyPairSync("ed25519");
    const paths = { private: join(folder, `${name}.pem`), public: join(folder, `${name}.pub.pem`) };
    writeFileSync(paths.private, privateKey.export({ type: "pkcs8", format: "pem" }));
    writeFileSync(paths.public, publicKey.export({ type: "spki", format: "pem" }));
    return paths;
  };
  const [owner, other] = [keys("owner"), keys("other")];
  const sign = (...more: readonly string[]) =>
    runCommand("sign-rulebook", book, "--key", owner.private, "--says", "A. Quill, standards owner", ...more);
  const check = (...trust: readonly string[]) =>
    runCommand("check-rules", book, ...trust.flatMap((path) => ["--trust", path]));
  const change = (path: string, from: string, to: string): void => {
    const text = readFileSync(join(book, path), "utf8");
    if (!text.includes(from)) throw new Error(`"${from}" is not in ${path}`);
    writeFileSync(join(book, path), text.replace(from, to));
  };
  return { folder, book, owner, other, sign, check, change, signature: join(book, "rulebook.sig") };
}

describe("sign-rulebook", () => {
  it("signs so that the key is trusted, and anybody can check it without the program", async () => {
    const { sign, check, owner, other, signature } = signersDesk();
    expect(await check(owner.public)).toMatchObject({ code: 2 });
    const signed = await sign();
    expect(signed).toMatchObject({ code: 0, err: "" });
    expect(await check(owner.public)).toMatchObject({ code: 0, err: "" });
    expect(await check(other.public, owner.public)).toMatchObject({ code: 0, err: "" });
    expect(await check()).toMatchObject({ code: 0, err: "" });
    const file = parse(readFileSync(signature, "utf8")) as Record<string, string>;
    expect(signed.out).toContain(file.key);
    const { algorithm, digest, name, says, version } = file;
    // RFC 8785: keys in order, no blanks.
    const text = JSON.stringify({ algorithm, digest, name, says, signs: "spotface rulebook", version });
    const key = createPublicKey(readFileSync(owner.public));
    expect(verify(null, Buffer.from(text), key, Buffer.from(file.signature ?? "", "base64"))).toBe(true);
  });

  it("gives the same bytes each time, and replaces a signature only when told", async () => {
    const { sign, signature } = signersDesk();
    await sign();
    const first = readFileSync(signature, "utf8");
    expect(await sign()).toMatchObject({ code: 2, err: expect.stringContaining("rulebook.sig") });
    expect(await sign("--overwrite")).toMatchObject({ code: 0 });
    expect(readFileSync(signature, "utf8")).toBe(first);
  });

  it("does not sign what does not load, or what has a case that does not hold", async () => {
    const { sign, change, signature } = signersDesk();
    change("seat/thin-wall.yaml", "wall_thickness: 3 mm", "wall_thickness: 1 mm");
    expect(await sign()).toMatchObject({ code: 2, err: expect.stringContaining("1 case to be put right") });
    change("seat/thin-wall.yaml", "judges: wall_thickness", "judges: wall_thicknes");
    expect(await sign()).toMatchObject({ code: 2, err: expect.stringContaining("1 mistake to be put right") });
    expect(existsSync(signature)).toBe(false);
  });

  it("refuses a key that is none, is public, is of another kind, or is shut by a passphrase", async () => {
    const { folder, book, owner } = signersDesk();
    const put = (name: string, text: string | Buffer): string => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };
    const rsa = generateKeyPairSync("rsa", { modulusLength: 2048 }).privateKey;
    const shut = generateKeyPairSync("ed25519").privateKey.export({
      type: "pkcs8",
      format: "pem",
      cipher: "aes-256-cbc",
      passphrase: "quill",
    });
    const signWith = (key: string) => runCommand("sign-rulebook", book, "--key", key, "--says", "me");
    const refusals = [
      [put("none.pem", "no key"), "holds no private key"],
      [owner.public, "it is a public key"],
      [put("rsa.pem", rsa.export({ type: "pkcs8", format: "pem" })), "of the kind rsa"],
      [put("shut.pem", shut), "SPOTFACE_KEY_PASSPHRASE"],
      [join(folder, "gone.pem"), "there is no such file"],
    ] as const;
    for (const [path, text] of refusals) {
      expect(await signWith(path)).toMatchObject({ code: 2, out: "", err: expect.stringContaining(text) });
    }
    process.env.SPOTFACE_KEY_PASSPHRASE = "quill";
    try {
      expect(await signWith(join(folder, "shut.pem"))).toMatchObject({ code: 0 });
    } finally {
      delete process.env.SPOTFACE_KEY_PASSPHRASE;
    }
    expect(
      await runCommand("sign-rulebook", join(folder, "nowhere"), "--key", owner.private, "--says", "me"),
    ).toMatchObject({ code: 2, err: expect.stringContaining("no folder with a rulebook") });
  });
});

describe("--trust", () => {
  it.each([
    ["there is no signature", "there is no signature that can be read"],
    ["another key", "it is signed by another key, sha256:"],
    ["the rulebook was changed", "the rulebook was changed after it was signed"],
    ["another version", 'it is over version 1.0.0 of "small book", and this is version 1.0.1'],
    ["the words of the signer were changed", "the signature does not match what this file says"],
    ["the digest was adapted", "the signature does not match what this file says"],
    ["the file is damaged", "88 characters of base64"],
    ["the key is private", "it is a private key"],
    ["the key is none", "it holds no public key"],
  ])("refuses a rulebook of which %s", async (what, says) => {
    const { sign, check, owner, other, change, signature, folder } = signersDesk();
    if (what !== "there is no signature") await sign();
    if (what === "the rulebook was changed") change("seat/thin-wall.yaml", "thin walls ring", "thin walls sing");
    if (what === "another version") change("rulebook.yaml", "1.0.0", "1.0.1");
    if (what === "the words of the signer were changed") change("rulebook.sig", "A. Quill", "B. Quill");
    if (what === "the digest was adapted") {
      const { digest } = parse(readFileSync(signature, "utf8")) as { digest: string };
      change(
        "rulebook.sig",
        digest,
        digest.replace(/^./, (sign) => (sign === "0" ? "1" : "0")),
      );
    }
    if (what === "the file is damaged") change("rulebook.sig", 'signature: "', 'signature: "?');
    writeFileSync(join(folder, "none.pem"), "no key");
    const trust = {
      "another key": other.public,
      "the key is private": owner.private,
      "the key is none": join(folder, "none.pem"),
    }[what];
    const run = await check(trust ?? owner.public);
    expect(run).toMatchObject({ code: 2, err: expect.stringContaining(says) });
    expect(run.err).toContain("[not-trusted]");
    expect(run.err).toContain("nothing was run");
  });

  it("stands in the result of a screening, and changes nothing else in it but the digest of the run", async () => {
    const { folder, owner, other } = signersDesk();
    const book = join(folder, "rules");
    cpSync(projectPath("rules"), book, { recursive: true });
    await runCommand("sign-rulebook", book, "--key", owner.private, "--says", "tested");
    const screen = ["screen", projectPath("samples/survey.xlsx"), "--json", "--rules", book];
    const plain = resultOf(await runCommand(...screen)) as unknown as Head;
    const trusted = resultOf(await runCommand(...screen, "--trust", owner.public)) as unknown as Head;
    const { key } = parse(readFileSync(join(book, "rulebook.sig"), "utf8")) as { key: string };
    expect(plain.rulebook.signedBy).toBeNull();
    expect(trusted.rulebook).toEqual({ ...plain.rulebook, signedBy: key });
    expect(trusted.digest).not.toBe(plain.digest);
    expect({ ...trusted, digest: "", rulebook: null }).toEqual({ ...plain, digest: "", rulebook: null });
    const refused = await runCommand(...screen, "--trust", other.public);
    expect(refused).toMatchObject({ code: 2, out: "", err: expect.stringContaining("the rulebook is not trusted") });
    const call = await screenFiles([projectPath("samples/survey.csv")], { rules: book, trust: [other.public] });
    expect(call).toMatchObject({ ok: false, findings: [{ code: "not-trusted" }] });
  });

  it("is asked of each folder for itself where one lies over another", async () => {
    const { folder, owner, other } = signersDesk();
    const [book, site] = [join(folder, "rules"), join(folder, "site")];
    cpSync(projectPath("rules"), book, { recursive: true });
    mkdirSync(site);
    const { name, version } = parse(readFileSync(join(book, "rulebook.yaml"), "utf8")) as Record<string, string>;
    const over = `over: { name: ${JSON.stringify(name)}, version: ${JSON.stringify(version)} }`;
    writeFileSync(join(site, "overlay.yaml"), `name: "works book"\nversion: "1.0.0"\n${over}\n`);
    const signed = (key: string, ...more: readonly string[]) =>
      runCommand("sign-rulebook", ...more, "--key", key, "--says", "tested");
    await signed(owner.private, book);
    const trusting = [owner.public, other.public].flatMap((path) => ["--trust", path]);
    const screen = (...trust: readonly string[]) =>
      runCommand("screen", projectPath("samples/survey.xlsx"), "--json", "--rules", book, "--over", site, ...trust);
    expect(await screen(...trusting)).toMatchObject({ code: 2, err: expect.stringContaining(`${site}/rulebook.sig`) });
    expect(await signed(other.private, site, "--rules", book)).toMatchObject({ code: 0, err: "" });
    const key = (path: string) => (parse(readFileSync(join(path, "rulebook.sig"), "utf8")) as { key: string }).key;
    const { rulebook } = resultOf(await screen(...trusting)) as unknown as Head;
    expect(rulebook).toMatchObject({ signedBy: key(book), overlays: [{ name: "works book", signedBy: key(site) }] });
    expect(await screen("--trust", owner.public)).toMatchObject({
      code: 2,
      err: expect.stringContaining(`${site}/rulebook.sig:1:1: it is signed by another key`),
    });
    expect(await signed(owner.private, book, "--rules", site, "--overwrite")).toMatchObject({
      code: 2,
      err: expect.stringContaining("for a folder that lies over a rulebook"),
    });
  });

  it("is asked of the rulebook that comes with the program, too", async () => {
    const { owner } = signersDesk();
    const run = await runCommand("blank-survey", join(freshFolder(), "s.xlsx"), "--trust", owner.public);
    expect(run).toMatchObject({
      code: 2,
      err: expect.stringContaining("rules/rulebook.sig:1:1: there is no signature"),
    });
  });

  it("reads the signature of a commit from that commit", async () => {
    const { book, sign, owner, change } = signersDesk();
    await sign();
    const git = (...args: readonly string[]) =>
      execFileSync("git", ["-c", "user.name=t", "-c", "user.email=t@example.org", ...args], { cwd: book });
    git("init", "-q");
    git("add", ".");
    git("commit", "-qm", "signed");
    change("rulebook.yaml", "1.0.0", "1.0.1");
    const at = (folder: string) => runCommand("check-rules", folder, "--trust", owner.public);
    expect(await at(`${book}@HEAD`)).toMatchObject({ code: 0 });
    expect(await at(book)).toMatchObject({ code: 2 });
  });
});

interface Head {
  readonly digest: string;
  readonly rulebook: { readonly signedBy: string | null };
}
