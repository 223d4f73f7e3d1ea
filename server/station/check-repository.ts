import { sensorAddress } from "../../drivers/balance-name.ts";
import { balanceProfile, holding } from "../checks/balance-profile.ts";
import { type BenchClosed, benchClosed } from "../checks/bench-closed.ts";
import type { CheckResult } from "../checks/check.ts";
import { type ThermometerPoint, thermometerPoints } from "../checks/thermometer-points.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { ProfileOf } from "../weighing/request.ts";
import { chartsOf } from "./check-charts.ts";
import {
  foundOfBalance,
  foundOfThermometer,
  type ProfileVersion,
  profileVersions,
} from "./profile-versions.ts";
import type { StoredCheck, StoredLimits } from "./stored-check.ts";

/** Every check of the bench, oldest first, and what follows from them. Attempts are only ever added. */
export interface CheckRepository {
  readonly all: readonly StoredCheck[];
  readonly limits: readonly StoredLimits[];
  /** why the checks of a balance close the bench, as of now or as of an earlier moment; undefined while it is open */
  closed(balance: string, at?: string): BenchClosed | undefined;
  /** profile of a balance from its checks and those of the thermometer, as of now */
  readonly profileOf: ProfileOf;
  /**
   * The versions of the profiles that a piece weighed on these balances takes its numbers from, the thermometer's among
   * them; written first where the ledger does not have them yet. Throws LedgerError.
   */
  currentProfiles(balances: readonly string[]): Promise<ProfileVersion[]>;
  /** the same from passed checks alone: what further checks are judged by */
  readonly passedProfileOf: ProfileOf;
  /** Keeps one attempt, passed or not; the same key gives the one that stands. Throws LedgerError. */
  keep(result: CheckResult, asked: unknown, key?: string): Promise<void>;
  /** Keeps new limits under their name and reason, and signs the chain up to them. Throws LedgerError. */
  keepLimits(limits: StoredLimits): Promise<void>;
  onChange(listener: () => void): void;
}

/** The name under which the bench's thermometer is checked. */
export const thermometerName = "thermometer";

/** Where sensors were compared, by their address. Checks oldest first. */
function sensorPoints(checks: readonly StoredCheck[]): Record<string, ThermometerPoint[]> {
  const addresses = new Set(checks.flatMap(({ of }) => sensorAddress(of) ?? []));
  return Object.fromEntries(
    [...addresses].map((address) => [
      address,
      thermometerPoints(checks.filter(({ of }) => sensorAddress(of) === address)),
    ]),
  );
}

const isOf = (balance: string, { of }: StoredCheck) => of === balance || of === thermometerName;

/** Reads the checks of a ledger. */
export async function checkRepository(ledger: Ledger, now: () => Date): Promise<CheckRepository> {
  const all: StoredCheck[] = [];
  const limits: StoredLimits[] = [];
  const listeners: (() => void)[] = [];
  for (const entry of await ledger.entries({ kind: ["check", "control-limits"] })) {
    const check = entry.kind === "check" ? checkOf(entry.id, entry.body) : undefined;
    if (check) all.push(check);
    if (entry.kind === "control-limits")
      limits.push({ ...(entry.body as unknown as StoredLimits), seq: entry.seq });
  }
  const profileFrom =
    (counts: (check: StoredCheck) => boolean): ProfileOf =>
    (balance, readabilityGrams) => {
      const at = now().toISOString();
      const results = all.filter((check) => isOf(balance, check) && counts(check));
      const sensors = sensorPoints(holding(all.filter(counts), at));
      const profile = balanceProfile({ balance, readabilityGrams, results, at, by: "bench" });
      return { ...profile, ...(Object.keys(sensors).length > 0 && { sensors }) };
    };
  const versions = await profileVersions(ledger);
  const current = (of: string) => {
    // its own checks alone; what is found does not hang on the readability, only what is assumed
    const profile = profileFrom((check) => check.of === of)(of, 0);
    return versions.current(
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
    async currentProfiles(balances) {
      const found = await Promise.all([...new Set([...balances, thermometerName])].map(current));
      return found.filter((version) => version !== undefined);
    },
    passedProfileOf: profileFrom(({ passed }) => passed),
    async keep(result, asked, key) {
      const body = JSON.parse(JSON.stringify({ ...result, asked }));
      const entry = await ledger.append("check", result.of, body, key === undefined ? {} : { key });
      if (all.some(({ id }) => id === entry.id)) return;
      all.push({ ...result, asked, id: entry.id });
      await current(result.of);
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
function checkOf(id: string, body: Record<string, unknown>): StoredCheck | undefined {
  const { at, by, of, found } = body;
  if (typeof at !== "string" || typeof by !== "string" || typeof of !== "string" || !found) return undefined;
  return { ...(body as unknown as CheckResult), id };
}
