import type { FastifyInstance } from "fastify";
import type { BalanceInUse } from "../bench/balance-in-use.ts";
import type { Bench } from "../bench/bench.ts";
import type { KeptProfiles } from "../bench/kept-profiles.ts";

export interface BalanceParts {
  bench: Bench;
  balance: BalanceInUse;
  profiles: KeptProfiles;
  demo: boolean;
}
export function balanceRoutes(_app: FastifyInstance, _parts: BalanceParts): void {}
