import type { Balance } from "../../drivers/balance.ts";
import { createFeed, type Feed } from "../../drivers/feed.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { type BalanceChoice, balanceHeard, balanceOf } from "./balance-choice.ts";
import { scaleOf } from "./feed-scale.ts";
import type { KeptProfile } from "./kept-profiles.ts";
import type { Scale } from "./scale.ts";

/** A balance whose cable is open and whose lines are heard, with what was told about it. */
export interface HeardBalance {
  /** undefined for the simulated one */
  choice: BalanceChoice | undefined;
  /** the learned profile the lines are read by */
  profile: KeptProfile | undefined;
  feed: Feed;
  scale: Scale;
  /** calls back for every line and event */
  onLine(listener: (record: LineRecord) => void): void;
  start(): void;
  /** closes the cable; its port is free for somebody else once this is done */
  close(): Promise<void>;
}

/** The balance of a choice, read through its learned profile where it has one. It is silent until it is started. */
export function heardBalance(choice: BalanceChoice, profile: KeptProfile | undefined): HeardBalance {
  const sends =
    choice.ask?.when === "capture"
      ? "on-request"
      : profile && !profile.profile.cadence.byItself && !choice.ask
        ? "on-key"
        : "by-itself";
  return hearing(balanceOf(choice, profile), { choice, profile, sends });
}

/** The same with every byte given on as it came, for learning its lines. Throws RangeError for a USB scale. */
export function heardForLearning(
  choice: BalanceChoice,
  profile: KeptProfile | undefined,
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
  told: Pick<HeardBalance, "choice" | "profile"> & { sends?: "by-itself" | "on-key" | "on-request" },
): HeardBalance {
  const { choice, profile, sends = "by-itself" } = told;
  const feed = createFeed({ balance, sends });
  return {
    choice,
    profile,
    feed,
    scale: scaleOf(balance.name, feed, profile),
    onLine: (listener) => feed.onLine(listener),
    start: () => balance.start(),
    async close() {
      feed.stop();
      await balance.stop();
    },
  };
}
