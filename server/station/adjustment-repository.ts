import type { Message } from "../../calibration/message.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { CheckRepository } from "./check-repository.ts";

/** A balance adjusted itself, and nobody has weighed the reference piece on it since. */
export interface AdjustmentOpen {
  /** ISO 8601, of the first notice that stands */
  since: string;
  /** what the balance said */
  notice: Message | string;
}

/** Adjustments that balances told of by themselves. They are kept in the ledger, so that a restart forgets none. */
export interface AdjustmentRepository {
  /** the adjustment that asks for the reference piece; undefined when it was weighed since, or somebody looked at it */
  open(balance: string): AdjustmentOpen | undefined;
  /** the same of every balance that asks for it */
  readonly allOpen: readonly (AdjustmentOpen & { of: string })[];
  /** The balance says that it adjusts itself. Told again while it is open, it is kept once. Throws LedgerError. */
  heard(balance: string, notice: Message): Promise<void>;
  /** A person, by name, looked at it. Throws LedgerError. */
  lookedAt(balance: string, by: string): Promise<void>;
  onChange(listener: () => void): void;
}

type Recorded = BodyOf<"adjustment"> & { at: string };

/** Reads the adjustments of a ledger; `checks` says when the reference piece was weighed. */
export async function adjustmentRepository(
  ledger: Ledger,
  checks: Pick<CheckRepository, "all">,
): Promise<AdjustmentRepository> {
  const all: Recorded[] = [];
  const listeners: (() => void)[] = [];
  const writing = new Set<string>();
  for (const { kind, at, body } of await ledger.entries({ kind: "adjustment" }))
    if (kind === "adjustment") all.push({ ...body, at });
  const open: AdjustmentRepository["open"] = (balance) => {
    const mine = all.filter(({ of }) => of === balance);
    const looked = mine.findLastIndex(({ lookedAtBy }) => lookedAtBy !== undefined);
    const first = mine.slice(looked + 1).find(({ at }) => !weighedAfter(balance, at));
    return first?.notice === undefined ? undefined : { since: first.at, notice: first.notice };
  };
  const weighedAfter = (balance: string, since: string) =>
    checks.all.some(({ kind, of, at }) => kind === "reference-piece" && of === balance && at > since);
  async function keep(body: BodyOf<"adjustment">): Promise<void> {
    const { at } = await ledger.append("adjustment", body.of, body);
    all.push({ ...body, at });
    for (const listener of listeners) listener();
  }
  return {
    open,
    get allOpen() {
      return [...new Set(all.map(({ of }) => of))].flatMap((of) => {
        const found = open(of);
        return found ? [{ of, ...found }] : [];
      });
    },
    async heard(balance, notice) {
      if (open(balance) || writing.has(balance)) return;
      writing.add(balance);
      await keep({ of: balance, notice }).finally(() => writing.delete(balance));
    },
    async lookedAt(balance, by) {
      if (open(balance)) await keep({ of: balance, lookedAtBy: by });
    },
    onChange: (listener) => void listeners.push(listener),
  };
}
