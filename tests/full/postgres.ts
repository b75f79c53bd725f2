import { spawnSync } from "node:child_process";
import { chownSync, copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";

const PACKAGED = "/usr/lib/postgresql";

/** A database server of its own for a test file. */
export interface Database {
  /**
   * Runs statements (and `\copy`) of which any failure fails the test.
   *
   * @returns rows as they are printed, columns parted by `|`
   */
  ask(statements: string): string;
  /** Lays a copy of a file where the server's own user may read it; the answer is its path. */
  lay(path: string): string;
  /** Runs statements that are to be refused; the answer is why. */
  refusal(statements: string): string;
  stop(): void;
}

/** The programs of the newest server that is installed; null where there is none. */
function programs(): string | null {
  if (!existsSync(PACKAGED)) return null;
  const versions = readdirSync(PACKAGED).filter((name) => existsSync(join(PACKAGED, name, "bin/initdb")));
  const [newest] = versions.sort((one, other) => Number(other) - Number(one));
  return newest === undefined ? null : join(PACKAGED, newest, "bin");
}

/** The server refuses to run as root; the package brings a user for it. */
function owner(): { readonly uid: number; readonly gid: number } | null {
  const id = (flag: string): number => Number(spawnSync("id", [flag, "postgres"], { encoding: "utf8" }).stdout || NaN);
  const [uid, gid] = [id("-u"), id("-g")];
  return Number.isNaN(uid) || Number.isNaN(gid) ? null : { uid, gid };
}

/**
 * Starts a server in a folder of its own, reached through a socket in that folder alone.
 *
 * @returns the database, or why there is none, for the test to be skipped with
 */
export function startDatabase(): Database | string {
  const bin = programs();
  if (bin === null) return `PostgreSQL is not installed (no ${PACKAGED}/*/bin)`;
  const isRoot = process.getuid?.() === 0;
  const user = isRoot ? owner() : null;
  if (isRoot && user === null) return "PostgreSQL does not run as root, and there is no user postgres";
  const folder = mkdtempSync(join(tmpdir(), "spotface-postgres-"));
  if (user) chownSync(folder, user.uid, user.gid);
  const data = join(folder, "data");
  const run = (program: string, args: readonly string[], input?: string): { status: number | null; all: string } => {
    const ended = spawnSync(join(bin, program), args, {
      ...user,
      cwd: folder,
      encoding: "utf8",
      input,
      maxBuffer: 1 << 28,
      env: { PATH: process.env.PATH, LC_ALL: "C", HOME: folder },
      // A server that keeps the pipes open would keep this call waiting.
      stdio: program === "pg_ctl" ? "ignore" : "pipe",
    });
    return { status: ended.status, all: `${ended.stdout ?? ""}${ended.stderr ?? ""}` };
  };
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  const made = run("initdb", [
    "-D",
    data,
    "-U",
    "spotface",
    "-A",
    "trust",
    "--encoding=UTF8",
    "--locale=C",
    "--no-sync",
  ]);
  const options = `-c listen_addresses='' -c unix_socket_directories='${folder}' -c fsync=off`;
  const started =
    made.status === 0
      ? run("pg_ctl", ["-D", data, "-l", join(folder, "log"), "-o", options, "-w", "-t", "60", "start"])
      : made;
  if (started.status !== 0) {
    remove();
    return `PostgreSQL does not start here: ${made.all.trim().split("\n").at(-1)}`;
  }
  const psql = (statements: string): ReturnType<typeof run> =>
    run(
      "psql",
      ["-h", folder, "-U", "spotface", "-d", "postgres", "-v", "ON_ERROR_STOP=1", "-X", "-q", "-A", "-t", "-f", "-"],
      statements,
    );
  return {
    ask: (statements) => {
      const { status, all } = psql(statements);
      if (status !== 0) throw new Error(all);
      return all.trim();
    },
    lay: (path) => {
      const copy = join(folder, basename(path));
      copyFileSync(path, copy);
      if (user) chownSync(copy, user.uid, user.gid);
      return copy;
    },
    refusal: (statements) => {
      const { status, all } = psql(statements);
      if (status === 0) throw new Error(`this was to be refused: ${statements}`);
      return all.trim();
    },
    stop: () => {
      run("pg_ctl", ["-D", data, "-m", "immediate", "stop"]);
      remove();
    },
  };
}
