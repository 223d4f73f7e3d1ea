import type { BalanceProfile } from "../checks/balance-profile.ts";
import { canonicalJson } from "../ledger/canonical-json.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Ledger } from "../ledger/ledger.ts";

/** A version of what the checks say of a balance or of the thermometer, as its entry stands in the ledger. */
export interface ProfileVersion extends BodyOf<"checked-profile"> {
  /** id and number of its entry, and when it was written */
  entry: string;
  seq: number;
  at: string;
}

/** The versions a ledger holds. Each change of a number is a new one; earlier ones stay. */
export interface ProfileVersions {
  /**
   * The version that says what the checks say now, written if it is not there yet; undefined while no check says
   * anything. `found`: the numbers that checks found. Throws LedgerError.
   */
  current(of: string, found: CheckedNumbers | undefined): Promise<ProfileVersion | undefined>;
}

/** Numbers that checks found, with the first day on which one of them runs out. */
export interface CheckedNumbers {
  numbers: Partial<
    Pick<
      BalanceProfile,
      "repeatability" | "immersedRepeatability" | "linearity" | "eccentricityPerGram" | "span" | "thermometer"
    >
  >;
  validUntil: string;
}

/** What checks found of the balance itself, without what is assumed; undefined when nothing was found. */
export function foundOfBalance(profile: BalanceProfile): CheckedNumbers | undefined {
  const { repeatability, immersedRepeatability, linearity, eccentricityPerGram, span, validUntil } = profile;
  const found = Object.entries({
    repeatability,
    immersedRepeatability,
    linearity,
    eccentricityPerGram,
    span,
  });
  const numbers = Object.fromEntries(found.filter(([, number]) => number && "check" in number.origin));
  return Object.keys(numbers).length === 0 ? undefined : { numbers, validUntil };
}

/** What checks found of the thermometer. */
export function foundOfThermometer({ thermometer, validUntil }: BalanceProfile): CheckedNumbers | undefined {
  return thermometer && { numbers: { thermometer }, validUntil };
}

/** Reads the versions of a ledger. */
export async function profileVersions(ledger: Ledger): Promise<ProfileVersions> {
  const newest = new Map<string, ProfileVersion>();
  for (const entry of await ledger.entries({ kind: "checked-profile" }))
    if (entry.kind === "checked-profile")
      newest.set(entry.subject, { ...entry.body, entry: entry.id, seq: entry.seq, at: entry.at });
  let queue: Promise<unknown> = Promise.resolve();

  async function current(of: string, found: CheckedNumbers | undefined) {
    if (found === undefined) return undefined;
    const before = newest.get(of);
    const numbers = JSON.parse(JSON.stringify(found.numbers));
    if (before && canonicalJson(before.numbers) === canonicalJson(numbers)) return before;
    const body = { of, version: (before?.version ?? 0) + 1, validUntil: found.validUntil, numbers };
    const entry = await ledger.append("checked-profile", of, body);
    const version = { ...body, entry: entry.id, seq: entry.seq, at: entry.at };
    newest.set(of, version);
    return version;
  }
  return {
    current(of, found) {
      const turn = queue.then(() => current(of, found));
      queue = turn.catch(() => undefined);
      return turn;
    },
  };
}
