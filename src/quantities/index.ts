export type { Drive, LowestRunning } from "./running-speed.js";
export { lowestRunningSpeed, speedVaries } from "./running-speed.js";
export type { Seat } from "./seat.js";
export { seatOf } from "./seat.js";
