import { exactly, type Fraction, less, roundedText, sumOf, zero } from "../../calibration/fraction.ts";
import { preciousMetals } from "../metals/precious-metal.ts";
import { written } from "./mass-text.ts";
import { minorDigits } from "./price.ts";
import type { Settled, SettledLine, Settlement } from "./settlement.ts";
import { intervalEnds } from "./source.ts";

type Ends = Settled["metals"][number]["pay"];

/** Lines added by metal, the fee of a metal taken off its own pay, and metals added by currency. Nothing is rounded again. */
export function totalsOf(
  lines: readonly SettledLine[],
  { prices, pays }: Settlement,
): Pick<Settled, "metals" | "totals"> {
  const metals = preciousMetals.flatMap((metal): Settled["metals"] => {
    const price = prices[metal]?.at(-1);
    if (!price) return [];
    const of = lines.filter((line) => line.metal === metal);
    const { currency } = price;
    const text = (amount: Fraction) => roundedText(amount, minorDigits(currency), "half-even");
    // where nothing is paid there is no fee
    const fee = text(of.length === 0 ? zero : exactly(price.fee));
    const pay = ends((end) => text(sumOf(of.map((line) => exactly(line.pay[end])))));
    return [
      {
        metal,
        price: price.entry,
        currency,
        fine_g: ends((end) => written(sumOf(of.map((line) => exactly(line.fine_g[end]))))),
        pay,
        fee,
        net: ends((end) => text(less(exactly(pay[end]), exactly(fee)))),
      },
    ];
  });
  const currencies = [...new Set(metals.map(({ currency }) => currency))];
  const totals = currencies.map((currency) => {
    const of = metals.filter((one) => one.currency === currency);
    const total = ends((end) =>
      roundedText(sumOf(of.map(({ net }) => exactly(net[end]))), minorDigits(currency), "half-even"),
    );
    return { currency, low: total.low, high: total.high, paid: total[pays] };
  });
  return { metals, totals };
}

function ends(of: (end: (typeof intervalEnds)[number]) => string): Ends {
  const [low, expected, high] = intervalEnds.map(of) as [string, string, string];
  return { low, expected, high };
}
