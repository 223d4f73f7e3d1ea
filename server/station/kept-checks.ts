import { balanceProfile } from "../checks/balance-profile.ts";
import { type BenchClosed, benchClosed } from "../checks/bench-closed.ts";
import type { CheckResult } from "../checks/check.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { ProfileOf } from "../weighing/request.ts";
import { chartsOf } from "./check-charts.ts";
import type { KeptCheck, KeptLimits } from "./kept-check.ts";
import {
  foundOfBalance,
  foundOfThermometer,
  type ProfileVersion,
  profileVersions,
} from "./profile-versions.ts";

/** Every check of the bench, oldest first, and what follows from them. Attempts are only ever added. */
export interface KeptChecks {
  readonly all: readonly KeptCheck[];
  readonly limits: readonly KeptLimits[];
  /** why the checks of a balance close the bench, as of now or as of an earlier moment; undefined while it is open */
  closed(balance: string, at?: string): BenchClosed | undefined;
  /** profile of a balance from its checks and those of the thermometer, as of now */
  readonly profileOf: ProfileOf;
  /**
   * The versions of the profiles that a piece weighed on these balances takes its numbers from, the thermometer's among
   * them; written first where the ledger does not have them yet. Throws LedgerError.
   */
  profilesInForce(balances: readonly string[]): Promise<ProfileVersion[]>;
  /** the same from passed checks alone: what further checks are judged by */
  readonly passedProfileOf: ProfileOf;
  /** Keeps one attempt, passed or not; the same key gives the one that stands. Throws LedgerError. */
  keep(result: CheckResult, asked: unknown, key?: string): Promise<void>;
  /** Keeps new limits under their name and reason, and signs the chain up to them. Throws LedgerError. */
  keepLimits(limits: KeptLimits): Promise<void>;
  onChange(listener: () => void): void;
}

/** The name under which the bench's thermometer is checked. */
export const thermometerName = "thermometer";

const isOf = (balance: string, { of }: KeptCheck) => of === balance || of === thermometerName;

/** Reads the checks of a ledger. */
export async function keptChecks(ledger: Ledger, now: () => Date): Promise<KeptChecks> {
  const all: KeptCheck[] = [];
  const limits: KeptLimits[] = [];
  const listeners: (() => void)[] = [];
  for (const entry of await ledger.entries({ kind: ["check", "control-limits"] })) {
    const check = entry.kind === "check" ? checkOf(entry.id, entry.body) : undefined;
    if (check) all.push(check);
    if (entry.kind === "control-limits")
      limits.push({ ...(entry.body as unknown as KeptLimits), seq: entry.seq });
  }
  const profileFrom =
    (counts: (check: KeptCheck) => boolean): ProfileOf =>
    (balance, readabilityGrams) =>
      balanceProfile({
        balance,
        readabilityGrams,
        results: all.filter((check) => isOf(balance, check) && counts(check)),
        at: now().toISOString(),
        by: "bench",
      });
  const versions = await profileVersions(ledger);
  const inForce = (of: string) => {
    // its own checks alone; what is found does not hang on the readability, only what is assumed
    const profile = profileFrom((check) => check.of === of)(of, 0);
    return versions.inForce(
      of,
      of === thermometerName ? foundOfThermometer(profile) : foundOfBalance(profile),
    );
  };
  const changed = () => {
    for (const listener of listeners) listener();
  };
  return {
    all,
    limits,
    closed(balance, at = now().toISOString()) {
      const mine = all.filter((check) => isOf(balance, check) && check.at <= at);
      const signed = limits.filter(({ from }) => from <= at);
      return benchClosed(mine, chartsOf({ all: mine, limits: signed }));
    },
    profileOf: profileFrom(() => true),
    async profilesInForce(balances) {
      const found = await Promise.all([...new Set([...balances, thermometerName])].map(inForce));
      return found.filter((version) => version !== undefined);
    },
    passedProfileOf: profileFrom(({ passed }) => passed),
    async keep(result, asked, key) {
      const body = JSON.parse(JSON.stringify({ ...result, asked }));
      const entry = await ledger.append("check", result.of, body, key === undefined ? {} : { key });
      if (all.some(({ id }) => id === entry.id)) return;
      all.push({ ...result, asked, id: entry.id });
      await inForce(result.of);
      changed();
    },
    async keepLimits(epoch) {
      const { seq } = await ledger.append("control-limits", epoch.of, { ...epoch });
      limits.push({ ...epoch, seq });
      // Limits are signed at once: nobody can move them later and leave the chain whole.
      await ledger.checkpoint();
      changed();
    },
    onChange(listener) {
      listeners.push(listener);
    },
  };
}

/** A check entry as a result; undefined for one of an older or foreign shape, which has no numbers to give. */
function checkOf(id: string, body: Record<string, unknown>): KeptCheck | undefined {
  const { at, by, of, found } = body;
  if (typeof at !== "string" || typeof by !== "string" || typeof of !== "string" || !found) return undefined;
  return { ...(body as unknown as CheckResult), id };
}
