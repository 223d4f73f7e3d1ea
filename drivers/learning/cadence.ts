import { message } from "../../calibration/message.ts";
import { median, type Observed } from "./observed.ts";
import type { Finding, Profile } from "./profile.ts";
import { stillPhases } from "./recording.ts";

/** Whether lines come by themselves, and how many in a second. `readings` are the lines or blocks with a weight. */
export function cadenceOf(readings: readonly Observed[]): { cadence: Profile["cadence"]; finding: Finding } {
  const gaps = readings.slice(1).map((line, i) => line.atMs - readings[i]!.atMs);
  const usual = median(gaps);
  const stillGaps = readings
    .slice(1)
    .flatMap((line, i) =>
      stillPhases.includes(line.at.phase) && line.at.index === readings[i]!.at.index ? [gaps[i]!] : [],
    );
  const regular = stillGaps.filter((gap) => gap < 2 * usual + 50 && gap > 0.4 * usual - 50).length;
  const byItself = stillGaps.length >= 6 && regular >= 0.8 * stillGaps.length && usual <= 2500;
  const linesPerSecond = byItself && usual > 0 ? Math.round(10_000 / usual) / 10 : null;
  const sure = readings.length >= 4;
  return {
    cadence: { byItself, linesPerSecond: linesPerSecond === 0 ? null : linesPerSecond },
    finding: {
      field: "cadence",
      sure,
      message: byItself
        ? message("learn.cadence.steady", { per_second: linesPerSecond ?? 0 })
        : message("learn.cadence.uneven", { times: readings.length }),
    },
  };
}
