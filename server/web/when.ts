import { localTime } from "../../calibration/local-time.ts";

/** A moment to the minute, UTC. */
export function minuteOf(at: string): string {
  return `${at.slice(0, 16).replace("T", " ")} UTC`;
}

/** A moment as the page writes it: date and time of day on the clock of the place, with how far it is from UTC. */
export function whenOf(at: string, zone = "UTC"): string {
  const { day, time, offset } = localTime(at, zone);
  return `${day} ${time} ${zone === "UTC" ? "UTC" : offset}`;
}
