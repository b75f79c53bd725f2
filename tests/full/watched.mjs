/**
 * Loaded ahead of the program: writes into the file that `WATCHED` names what the process did that a test of its
 * output cannot see: its work and peak memory, places it tried to connect to, and names added to what every object inherits.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { Socket } from "node:net";

const inherited = Object.getOwnPropertyNames(Object.prototype).join();
const connections = [];
const { connect } = Socket.prototype;
Socket.prototype.connect = function (...args) {
  connections.push(JSON.stringify(args[0]));
  return connect.apply(this, args);
};

/** On Linux of the program alone; elsewhere who started it may count too. */
function peakKib() {
  try {
    return Number(/^VmHWM:\s*(\d+) kB$/m.exec(readFileSync("/proc/self/status", "utf8"))?.[1]);
  } catch {
    return process.resourceUsage().maxRSS;
  }
}

process.on("exit", () => {
  const isPolluted = Object.getOwnPropertyNames(Object.prototype).join() !== inherited;
  const { user, system } = process.cpuUsage();
  const said = { processorSeconds: (user + system) / 1e6, peakMib: peakKib() / 1024, connections, isPolluted };
  writeFileSync(process.env.WATCHED, JSON.stringify(said));
});
