/**
 * Loaded ahead of the program: kills it at one step of its writing, with half of the bytes of that step on the disk.
 * `DIES_AT` is the number of the step from 1; without it the steps are counted and said at the end.
 */
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

const diesAt = Number(process.env.DIES_AT ?? Number.POSITIVE_INFINITY);
const { open, rename, link, rm } = fs.promises;
let steps = 0;

async function step(half) {
  steps += 1;
  if (steps !== diesAt) return;
  await half?.();
  process.kill(process.pid, "SIGKILL");
}

function watched(file) {
  const write = file.write.bind(file);
  const own = { sync: file.sync.bind(file), close: file.close.bind(file) };
  file.write = async (bytes, from, length) => {
    await step(() => write(bytes, from, Math.floor(length / 2)));
    return write(bytes, from, length);
  };
  for (const [name, call] of Object.entries(own)) file[name] = () => step().then(call);
  return file;
}

fs.promises.open = async (path, flags, mode) => {
  if (flags !== "wx") return open(path, flags, mode);
  await step();
  return watched(await open(path, flags, mode));
};
fs.promises.rename = (from, to) => step().then(() => rename(from, to));
fs.promises.link = (from, to) => step().then(() => link(from, to));
fs.promises.rm = (path, options) => step().then(() => rm(path, options));
syncBuiltinESMExports();

process.on("exit", () => {
  fs.writeSync(2, `\nsteps:${steps}\n`);
});
