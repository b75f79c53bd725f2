import { expect, it } from "vitest";
import { fillMessage } from "../../src/screening/messages.js";
import { known, unknown } from "../tools/make-record.js";

const facts = new Map([
  ["target_torque", known(12)],
  ["applied_torque", unknown("missing")],
  ["mounted_on", known("absent")],
  ["thread_depth", known(8.5)],
]);

it.each([
  ["the thread is {thread_depth} deep", "the thread is 8.5 mm deep"],
  ["the torque (planned {target_torque}, applied {applied_torque}) is high", "the torque (planned 12 N·m) is high"],
  ["the torque (applied {applied_torque}) is high", "the torque is high"],
  ["the seat ({mounted_on}) is soft", "the seat is soft"],
  ["the depth is {hole_depth} (as drilled)", "the depth is not known (as drilled)"],
])("fills in %s", (template, expected) => {
  expect(fillMessage(template, facts)).toBe(expected);
});
