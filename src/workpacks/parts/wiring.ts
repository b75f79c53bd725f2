import { type JobFacts, todo } from "../job-facts.js";
import type { JobLine } from "../pack.js";

/** Laying the cable. */
export function cableLines(job: JobFacts): readonly JobLine[] {
  return [
    todo(
      "Lay the cable along the route. Nothing of it crosses a walkway or comes near a rotating part.",
      job.value("cable_route"),
      job.value("cable_length"),
      ...job.known("cable_type", "conductor_size", "junction_box"),
    ),
    todo(
      "Fix it near the sensor, with a loop that lets water drip off before the connector, and no bend tighter than allowed.",
      ...["strain_relief_distance", "bend_radius", "power_cable_distance"]
        .filter((fact) => job.isKnown(fact))
        .map((fact) => job.planned(fact)),
      ...job.known("drip_loop"),
    ),
    todo("Earth the screen where it is planned, and nowhere else.", job.value("screen_earthed")),
  ];
}

/** Connecting and switching on. */
export function supplyLines(job: JobFacts): readonly JobLine[] {
  return [
    todo("Switch the supply off and make sure that it is off.", job.value("supply_name"), job.value("supply_kind")),
    todo("Wire up by the sheet of the sensor, and cap every socket that stays empty.", job.value("channel")),
    todo("Switch on, check the polarity at the open plug, switch off again, and only then mate it."),
    todo(
      "Switch on and measure the voltage with the sensor running.",
      job.expected("voltage_at_sensor", "expected_voltage", "voltage to be expected"),
      ...job.known("supply_voltage"),
    ),
    todo("Tap on the machine beside the sensor: the right channel must move, in the stated direction."),
  ];
}
