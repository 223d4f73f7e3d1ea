import type { TestBench } from "../build.ts";

/** Writes a melt with final figures in gold, as its forms do: invented, of one lot that nobody weighed. */
export async function settledMelt(at: TestBench, { bar, permille }: { bar: string; permille: string }) {
  const melt = `melt-of-${bar}`;
  const mass = { text: "100.00", unit: "g" as const, grams: "100.00" };
  await at.ledger.append("melt-made", melt, {
    name: melt,
    lots: [`lot-of-${bar}`],
    before: mass,
    lots_g: "100.00",
    by: "KR",
  });
  await at.ledger.append("melt-poured", melt, { after: mass, bar, by: "KR" });
  const results = [{ metal: "gold" as const, permille, from: "house" as const, entries: ["-"] }];
  await at.ledger.append("melt-settled", melt, { before_g: "100.00", after_g: "100.00", results, by: "KR" });
  return melt;
}
