import type * as promises from "node:fs/promises";

type Disk = typeof promises;
type File = Awaited<ReturnType<Disk["open"]>>;

/** What the disk does at one of its steps. */
export type Break = "ENOSPC" | "EACCES" | "stops";

/** A disk whose steps are counted, and which fails or stops at one of them. */
export interface FailingDisk {
  /** Steps so far: files opened, written, synced and closed, and names changed. */
  steps: number;
  /** The step at which it breaks; beyond all steps it never does. */
  breaksAt: number;
  how: Break;
  /** Files that were opened for writing, to be closed in the end: one that stops does not close them. */
  readonly opened: File[];
}

/** The file system of Node with that disk under it; in a write, half of the bytes arrive before it breaks. */
export function failing(real: Disk, disk: FailingDisk): Disk {
  const step = async (half?: () => Promise<unknown>): Promise<void> => {
    disk.steps += 1;
    if (disk.steps !== disk.breaksAt) return;
    await half?.();
    // Nothing goes on after the step, as if the process had been killed there.
    if (disk.how === "stops") return new Promise(() => {});
    throw Object.assign(new Error(`${disk.how}: made to fail`), { code: disk.how });
  };
  const watched = (file: File): File =>
    new Proxy(file, {
      get(target, key) {
        if (key === "write") {
          return async (bytes: Uint8Array, from: number, length: number) => {
            await step(() => target.write(bytes, from, Math.floor(length / 2)));
            // A disk may take less than it is given at once.
            return target.write(bytes, from, Math.ceil(length * 0.7));
          };
        }
        if (key === "sync" || key === "close") return () => step().then(() => target[key]());
        const value: unknown = Reflect.get(target, key);
        return typeof value === "function" ? value.bind(target) : value;
      },
    });
  return {
    ...real,
    open: async (path, flags, mode) => {
      if (flags !== "wx") return real.open(path, flags, mode);
      await step();
      const file = await real.open(path, flags, mode);
      disk.opened.push(file);
      return watched(file);
    },
    rename: (from, to) => step().then(() => real.rename(from, to)),
    link: (from, to) => step().then(() => real.link(from, to)),
  };
}
