import { type Profile, profileSchema } from "../../drivers/learning/profile.ts";
import { exportProfile } from "../../drivers/learning/samples.ts";
import type { Ledger } from "../ledger/ledger.ts";

/** A learned profile as the ledger keeps it. */
export interface StoredProfile {
  name: string;
  /** counts up with every change under the same name; earlier ones stay in the ledger */
  version: number;
  keptAt: string;
  profile: Profile;
}

/** The learned profiles of the bench's balances, newest version of each name, newest first. */
export interface ProfileRepository {
  readonly all: readonly StoredProfile[];
  named(name: string): StoredProfile | undefined;
  /** Keeps a profile as the next version of its name. Throws LedgerError when it is not stored. */
  keep(profile: Profile): Promise<StoredProfile>;
}

/** More profiles than a bench ever has balances. */
const entriesLookedAt = 500;

export async function profileRepository(ledger: Ledger): Promise<ProfileRepository> {
  const entries = await ledger.entries({
    kind: "balance-profile",
    newestFirst: true,
    limit: entriesLookedAt,
  });
  let all: StoredProfile[] = [];
  for (const entry of entries) {
    if (entry.kind !== "balance-profile") continue;
    const { name, version, profile } = entry.body;
    const read = profileSchema.safeParse(profile);
    if (read.success && !all.some((one) => one.name === name))
      all.push({ name, version, keptAt: entry.at, profile: read.data });
  }
  const named = (name: string) => all.find((one) => one.name === name);
  return {
    get all() {
      return all;
    },
    named,
    async keep(profile) {
      const { name } = profile;
      const version = (named(name)?.version ?? 0) + 1;
      const asJson = JSON.parse(exportProfile(profile));
      const entry = await ledger.append("balance-profile", "balances", { name, version, profile: asJson });
      const kept = { name, version, keptAt: entry.at, profile };
      all = [kept, ...all.filter((one) => one.name !== name)];
      return kept;
    },
  };
}
