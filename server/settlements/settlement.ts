import type { EntryOf } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";
import type { LotPrice } from "./price.ts";
import type { IntervalEnd, Source, StatedSource } from "./source.ts";

/** A word somebody gave, with who, when and why. */
export interface Said<T> {
  value: T;
  entry: string;
  at: string;
  by?: string;
  reason?: string;
}

/** A fineness somebody states of one piece; without a metal it is that of the claim. */
export interface StatedFineness extends Said<string> {
  saidBy: StatedSource;
  metal?: PreciousMetal;
}

/** What was said of one piece beside its weighing. */
export interface ItemTerms {
  /** stones and other parts, decimal text in g */
  deducted?: Said<string>;
  /** the newest word of each source on each metal */
  fineness: readonly StatedFineness[];
  decision?: EntryOf<"settlement-decision">;
}

/** What is agreed of a lot beside its pieces: prices, words on pieces, whom to believe. */
export interface Settlement {
  /** every price of a metal, oldest first; the last one counts */
  prices: Partial<Record<PreciousMetal, readonly LotPrice[]>>;
  /** by the id of the piece */
  terms: Readonly<Record<string, ItemTerms>>;
  /** most believed first */
  trust: readonly Source[];
  /** which figure of an interval is paid */
  pays: IntervalEnd;
  /** a density counts as laboratory results on other pieces of the claim narrow it; otherwise over all the claim allows */
  narrowed: boolean;
}

/** What a settlement comes to: frozen like this at closing. */
export type Settled = NonNullable<BodyOf<"lot-closed">["settlement"]>;
export type SettledLine = Settled["lines"][number];
export type LeftOut = Settled["left_out"][number];

/** What is paid, in one line: a page that shows another sum than there is by now shows an old one. */
export function totalsText({ totals }: Pick<Settled, "totals">): string {
  return totals.map(({ paid, currency }) => `${paid} ${currency}`).join(" + ");
}

/** The price of each metal that counts. */
export function currentPrices({ prices }: Settlement): LotPrice[] {
  return Object.values(prices).flatMap((versions) => versions.at(-1) ?? []);
}
