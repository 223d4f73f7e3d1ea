import type { CableOptions } from "./cabled-device.ts";
import { type Clock, systemClock } from "./clock.ts";
import type { Profile } from "./learning/profile.ts";
import { readByProfile } from "./learning/reader.ts";
import { cutByProfile } from "./learning/samples.ts";
import { lineText } from "./line.ts";
import { defaultPatienceMs } from "./listening.ts";

/** How much longer than its usual gap a balance may be silent, ms. */
const overPaceMs = 1000;

/** How a balance is listened to whose lines were learned: cut, read and waited for by its profile. */
export function profiledLines(
  profile: Profile,
  clock: Clock = systemClock,
): Required<Pick<CableOptions, "read" | "cutter" | "patienceMs">> {
  const { byItself, linesPerSecond } = profile.cadence;
  return {
    patienceMs: byItself
      ? linesPerSecond === null
        ? defaultPatienceMs
        : overPaceMs + 1000 / linesPerSecond
      : Number.POSITIVE_INFINITY,
    read: () => readByProfile(profile),
    cutter({ onLine, firstLine = "drop" }) {
      const cutter = cutByProfile(profile, firstLine);
      const hear = (lines: ReturnType<typeof cutter.push>) => {
        for (const { bytes } of lines) onLine({ bytes, text: lineText(bytes) });
      };
      const { silenceMs } = cutter;
      return {
        push: (chunk) => hear(cutter.push(chunk, clock.monotonicMs())),
        // Called once the silence has passed that ends a line.
        idle: () => hear(cutter.idle(clock.monotonicMs() + 1)),
        waiting: silenceMs !== null,
        ...(silenceMs !== null && { idleMs: silenceMs }),
        reset: () => cutter.reset(),
      };
    },
  };
}
