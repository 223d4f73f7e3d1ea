import type { Balance } from "../../drivers/device.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { createReadingStream, type ReadingStream } from "../../drivers/reading-stream.ts";
import { type BalanceChoice, balanceHeard, balanceOf } from "./balance-choice.ts";
import type { StoredProfile } from "./profile-repository.ts";
import type { Scale } from "./scale.ts";
import { scaleOf } from "./stream-scale.ts";

/** A balance whose cable is open and whose lines are heard, with what was told about it. */
export interface HeardBalance {
  /** undefined for the simulated one */
  choice: BalanceChoice | undefined;
  /** the learned profile the lines are read by */
  profile: StoredProfile | undefined;
  stream: ReadingStream;
  scale: Scale;
  /** calls back for every line and event */
  onLine(listener: (record: LineRecord) => void): void;
  start(): void;
  /** closes the cable; its port is free for somebody else once this is done */
  close(): Promise<void>;
}

/** The balance of a choice, read through its learned profile where it has one. It is silent until it is started. */
export function heardBalance(choice: BalanceChoice, profile: StoredProfile | undefined): HeardBalance {
  const sends =
    choice.ask?.when === "capture"
      ? "on-request"
      : profile && !profile.profile.cadence.byItself && !choice.ask
        ? "on-key"
        : "by-itself";
  return hearing(balanceOf(choice, profile), { choice, profile, sends });
}

/** The same with every byte given on as it came, for learning its lines. Throws Refusal for a USB scale. */
export function heardForLearning(
  choice: BalanceChoice,
  profile: StoredProfile | undefined,
  hear: (bytes: Uint8Array) => void,
): HeardBalance {
  return hearing(balanceHeard(choice, hear), { choice, profile });
}

/** A balance that needs no choice: the simulated one. */
export function heardWithoutChoice(balance: Balance): HeardBalance {
  return hearing(balance, { choice: undefined, profile: undefined });
}

function hearing(
  balance: Balance,
  given: Pick<HeardBalance, "choice" | "profile"> & { sends?: "by-itself" | "on-key" | "on-request" },
): HeardBalance {
  const { choice, profile, sends = "by-itself" } = given;
  const stream = createReadingStream({ balance, sends });
  return {
    choice,
    profile,
    stream,
    scale: scaleOf(balance.name, stream, profile),
    onLine: (listener) => stream.onLine(listener),
    start: () => balance.start(),
    async close() {
      stream.stop();
      await balance.stop();
    },
  };
}
