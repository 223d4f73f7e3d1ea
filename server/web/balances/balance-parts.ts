import type { Clock } from "../../../drivers/clock.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Bench } from "../../station/bench.ts";
import type { ProfileRepository } from "../../station/profile-repository.ts";

/** What the Balances pages work with. */
export interface BalanceParts {
  bench: Bench;
  balance: BalanceInUse;
  profiles: ProfileRepository;
  demo: boolean;
  /** the clock of the guided half minute */
  clock?: Clock;
  /** how long finding listens at each setting, ms */
  findingMs?: number;
}
