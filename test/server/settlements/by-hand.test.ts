import { describe, expect, test } from "vitest";
import { exactly, product, ratio } from "../../../calibration/fraction.ts";
import type { LotItem } from "../../../server/lots/lot-item.ts";
import type { MeltYield } from "../../../server/settlements/item-evidence.ts";
import { assay, open, piece, price, type Said, settled } from "./settled-lot.ts";

/*
 * Settlements worked by hand, to the smallest unit of their currency: each sum stands twice, as it was worked on paper and
 * as the exact fraction of the figures on the page (`hand`), which shares nothing with the program. Pieces, prices and
 * names are invented. 1 ozt = 31.103 476 8 g and 1 dwt = 1.555 173 84 g: NIST SP 811 (2008), appendix B.8.
 */

type Way = "down" | "up" | "half-even";
/** Factors over divisors as they are written, rounded once to so many decimals. */
type Line = { times: string[]; over?: string[]; way?: Way; digits?: number };

/** A decimal as a whole number over a power of ten. */
function whole(decimal: string): [bigint, bigint] {
  const [digits = "", decimals = ""] = decimal.split(".");
  return [BigInt(digits + decimals), 10n ** BigInt(decimals.length)];
}

/** A line in the smallest unit of its currency. */
function worth({ times, over = [], way = "down", digits = 2 }: Line): bigint {
  let [top, under] = [10n ** BigInt(digits), 1n];
  for (const [n, d] of times.map(whole)) [top, under] = [top * n, under * d];
  for (const [n, d] of over.map(whole)) [top, under] = [top * d, under * n];
  const [floor, rest] = [top / under, top % under];
  if (way === "down" || rest === 0n) return floor;
  if (way === "up") return floor + 1n;
  const twice = 2n * rest;
  return twice > under || (twice === under && floor % 2n === 1n) ? floor + 1n : floor;
}

/** Lines added, the fee taken off, as money is written. */
function summed(lines: readonly Line[], fee = "0", digits = 2): string {
  const sum = lines.reduce((all, line) => all + worth(line), 0n) - worth({ times: [fee], digits });
  const text = `${sum < 0n ? -sum : sum}`.padStart(digits + 1, "0");
  const cut = text.length - digits;
  return `${sum < 0n ? "-" : ""}${text.slice(0, cut)}${digits > 0 ? `.${text.slice(cut)}` : ""}`;
}

const terms = (of: object): Said => ["lot-terms", { piece: "31", by: "KR", ...of } as never];
const stamp = (permille: string, saidBy = "stamp") => ({ fineness: { permille, saidBy, metal: "gold" } });
const decision = (of: object): Said => [
  "settlement-decision",
  { piece: "31", pays: true, mass: "first", reason: "seen by both", by: "KR", ...of } as never,
];
const trust = (order: string[], pays = "low"): Said => [
  "settlement-trust",
  { trust: order, pays, reason: "agreed", by: "KR" } as never,
];

type Worked = {
  name: string;
  items: LotItem[];
  said: Said[];
  /** what is paid, currency after currency */
  paid: string[];
  /** the same as an exact fraction of the written figures, currency after currency */
  hand: { lines: Line[]; fee?: string; digits?: number }[];
  melts?: MeltYield[];
  leftOut?: [ticket: string, why: string][];
  /** both ends, where they differ */
  ends?: [low: string, high: string];
};

const worked: Worked[] = [
  {
    name: "stones off, then a fineness: (20.00 − 5.00) g × 750 ‰ × 100",
    items: [piece("31", ["20.00"])],
    said: [price({ price: "100" }), terms({ deducted_g: "5.00" }), terms(stamp("750"))],
    paid: ["1125.00 EUR"],
    hand: [{ lines: [{ times: ["15.00", "750", "100"], over: ["1000"] }] }],
  },
  {
    name: "the fineness first, then the stones: the same",
    items: [piece("31", ["20.00"])],
    said: [price({ price: "100" }), terms(stamp("750")), terms({ deducted_g: "5.00" })],
    paid: ["1125.00 EUR"],
    hand: [{ lines: [{ times: ["15.00", "750", "100"], over: ["1000"] }] }],
  },
  {
    name: "a later stamp stands behind the laboratory: 12.90 g × 585.2 ‰ × 60 = 452.9448",
    items: [piece("31", ["12.90"], { assays: [assay("gold", "585.2")], fine: open(12.9, 560, 600) })],
    said: [price({}), terms(stamp("580"))],
    paid: ["452.94 EUR"],
    hand: [{ lines: [{ times: ["12.90", "585.2", "60"], over: ["1000"] }] }],
  },
  {
    name: "gold 740 and silver 120 of one report: 444.00 + 10 g × 120 ‰ × 1.10 × 90 % = 1.188",
    items: [piece("31", ["10.00"], { assays: [assay("gold", "740"), assay("silver", "120")] })],
    said: [price({}), price({ metal: "silver", price: "1.10", ratePercent: "90" })],
    paid: ["445.18 EUR"],
    hand: [
      {
        lines: [
          { times: ["10.00", "740", "60"], over: ["1000"] },
          { times: ["10.00", "120", "1.10", "90"], over: ["1000", "100"] },
        ],
      },
    ],
  },
  {
    name: "silver of the report without a price is listed, not lost",
    items: [piece("31", ["10.00"], { assays: [assay("gold", "740"), assay("silver", "120")] })],
    said: [price({})],
    paid: ["444.00 EUR"],
    hand: [{ lines: [{ times: ["10.00", "740", "60"], over: ["1000"] }] }],
    leftOut: [["31", "no-price"]],
  },
  {
    name: "a piece whose claim is excluded pays nothing, whatever a customer says",
    items: [
      piece("31", ["8.00"], { state: "excluded" }),
      piece("32", ["7.00"], { fine: open(7, 1000, 1000) }),
    ],
    said: [price({}), terms(stamp("999", "customer"))],
    paid: ["420.00 EUR"],
    hand: [{ lines: [{ times: ["7.00", "1000", "60"], over: ["1000"] }] }],
    leftOut: [["31", "excluded"]],
  },
  {
    name: "a named person pays it all the same, by the laboratory: 8.00 g × 916 ‰ × 60",
    items: [piece("31", ["8.00"], { state: "excluded", assays: [assay("gold", "916")] })],
    said: [price({}), decision({})],
    paid: ["439.68 EUR"],
    hand: [{ lines: [{ times: ["8.00", "916", "60"], over: ["1000"] }] }],
  },
  {
    name: "weighed again 1 g lighter: nothing is paid until somebody decides",
    items: [
      piece("31", ["12.90"], {
        again: { grams: 11.9, stepG: 0.01, reading: "11.90" },
        fine: open(12.9, 740, 760),
      }),
    ],
    said: [price({ ratePercent: "95" }), terms(stamp("750"))],
    paid: ["0.00 EUR"],
    hand: [{ lines: [] }],
    leftOut: [["31", "mass-changed"]],
  },
  {
    name: "decided for the second mass: 11.90 g × 750 ‰ × 60 × 95 % = 508.725",
    items: [
      piece("31", ["12.90"], {
        again: { grams: 11.9, stepG: 0.01, reading: "11.90" },
        fine: open(12.9, 740, 760),
      }),
    ],
    said: [price({ ratePercent: "95" }), terms(stamp("750")), decision({ mass: "again" })],
    paid: ["508.72 EUR"],
    hand: [{ lines: [{ times: ["11.90", "750", "60", "95"], over: ["1000", "100"] }] }],
  },
  {
    name: "a void record and one that a check stops pay nothing and are listed",
    items: [
      piece("30", ["5.00"], { voided: true, counts: false }),
      piece("31", ["6.00"], { state: "no-valid-reading", counts: false }),
      piece("32", ["7.00"], { fine: open(7, 500, 500) }),
    ],
    said: [price({}), terms(stamp("750"))],
    paid: ["210.00 EUR"],
    hand: [{ lines: [{ times: ["7.00", "500", "60"], over: ["1000"] }] }],
    leftOut: [
      ["30", "voided"],
      ["31", "no-valid-reading"],
    ],
  },
  {
    name: "mixed claims by density are one line: 32 g, 500 to 600 ‰, at 60",
    items: [
      piece("31", ["20.00"], { fine: open(20, 500, 600) }),
      piece("32", ["12.00"], { claim: "au-750", fine: open(12, 500, 600) }),
    ],
    said: [price({})],
    paid: ["960.00 EUR"],
    hand: [{ lines: [{ times: ["32.00", "500", "60"], over: ["1000"] }] }],
    ends: ["960.00", "1152.00"],
  },
  {
    name: "an agreed expected value: 32 g × 550 ‰ × 60",
    items: [piece("31", ["32.00"], { fine: open(32, 500, 600) })],
    said: [price({}), trust(["laboratory", "melt", "density", "stamp", "customer"], "expected")],
    paid: ["1056.00 EUR"],
    hand: [{ lines: [{ times: ["32.00", "550", "60"], over: ["1000"] }] }],
    ends: ["960.00", "1152.00"],
  },
  {
    name: "a price by the troy ounce, to the seller: 12.90 × 0.585 ÷ 31.1034768 × 2411.35 × 0.965 = 564.5744…",
    items: [piece("31", ["12.90"])],
    said: [price({ price: "2411.35", per: "ozt", ratePercent: "96.5", rounding: "up" }), terms(stamp("585"))],
    paid: ["564.58 EUR"],
    hand: [
      {
        lines: [
          { times: ["12.90", "585", "2411.35", "96.5"], over: ["1000", "31.1034768", "100"], way: "up" },
        ],
      },
    ],
  },
  {
    name: "a reading in pennyweights at a price by the pennyweight: 8.29 × 0.585 × 118.40 × 0.97 = 556.9748…",
    items: [piece("31", ["12.8923911336"])],
    said: [price({ price: "118.40", per: "dwt", ratePercent: "97" }), terms(stamp("585"))],
    paid: ["556.97 EUR"],
    hand: [
      { lines: [{ times: ["12.8923911336", "585", "118.40", "97"], over: ["1000", "1.55517384", "100"] }] },
    ],
  },
  {
    name: "half a cent to the even one: 1.00 g of fine gold at 12.125",
    items: [piece("31", ["1.00"])],
    said: [price({ price: "12.125", rounding: "half-even" }), terms(stamp("1000"))],
    paid: ["12.12 EUR"],
    hand: [{ lines: [{ times: ["1.00", "12.125"], way: "half-even" }] }],
  },
  {
    name: "a fee above the pay is owed, not hidden: 20.00 × 0.585 × 80.1 = 937.17 − 5000",
    items: [piece("31", ["20.00"])],
    said: [price({ price: "80.1", fee: "5000" }), terms(stamp("585"))],
    paid: ["-4062.83 EUR"],
    hand: [{ lines: [{ times: ["20.00", "585", "80.1"], over: ["1000"] }], fee: "5000" }],
  },
  {
    name: "two currencies stay apart: 6.00 g × 750 ‰ × 60, and 100.0 g × 925 ‰ ÷ 31.1034768 × 31.27 = 92.9954…",
    items: [piece("31", ["6.00"]), piece("32", ["100.0"], { claim: "ag-925", metal: "silver" })],
    said: [
      price({}),
      price({ metal: "silver", price: "31.27", per: "ozt", currency: "CHF", rounding: "half-even" }),
      terms(stamp("750")),
      terms({ piece: "32", fineness: { permille: "925", saidBy: "stamp", metal: "silver" } }),
    ],
    paid: ["270.00 EUR", "93.00 CHF"],
    hand: [
      { lines: [{ times: ["6.00", "750", "60"], over: ["1000"] }] },
      { lines: [{ times: ["100.0", "925", "31.27"], over: ["1000", "31.1034768"], way: "half-even" }] },
    ],
  },
  {
    name: "a stamp believed before the density, and against it, pays nothing alone",
    items: [piece("31", ["10.00"], { fine: open(10, 700, 780) })],
    said: [price({}), terms(stamp("999")), trust(["laboratory", "melt", "stamp", "density", "customer"])],
    paid: ["0.00 EUR"],
    hand: [{ lines: [] }],
    leftOut: [["31", "contradicted"]],
  },
  {
    name: "a customer's 999 that does not fit is not paid: the density's 700 ‰ of 10.00 g at 60",
    items: [piece("31", ["10.00"], { fine: open(10, 700, 780) })],
    said: [price({}), terms(stamp("999", "customer"))],
    paid: ["420.00 EUR"],
    hand: [{ lines: [{ times: ["10.00", "700", "60"], over: ["1000"] }] }],
    ends: ["420.00", "468.00"],
  },
  {
    name: "three dry readings, their exact mean 38.72 g ÷ 3: × 585 ‰ × 60 = 453.024",
    items: [piece("31", ["12.90", "12.91", "12.91"], { assays: [assay("gold", "585")] })],
    said: [price({})],
    paid: ["453.02 EUR"],
    hand: [{ lines: [{ times: ["38.72", "585", "60"], over: ["3", "1000"] }] }],
  },
  {
    name: "a currency without cents: 12.90 g × 585 ‰ × 10 875.5 = 82 071.9…",
    items: [piece("31", ["12.90"])],
    said: [price({ price: "10875.5", currency: "JPY", rounding: "half-even" }), terms(stamp("585"))],
    paid: ["82072 JPY"],
    hand: [
      {
        lines: [{ times: ["12.90", "585", "10875.5"], over: ["1000"], way: "half-even", digits: 0 }],
        digits: 0,
      },
    ],
  },
  {
    name: "a word taken back no longer counts: the stamp's 580 ‰ of 12.90 g at 60",
    items: [piece("31", ["12.90"])],
    said: [
      price({}),
      terms(stamp("580")),
      terms(stamp("700", "laboratory")),
      terms({ withdrawn: [{ saidBy: "laboratory", metal: "gold" }], reason: "of another ring" }),
    ],
    paid: ["448.92 EUR"],
    hand: [{ lines: [{ times: ["12.90", "580", "60"], over: ["1000"] }] }],
  },
  {
    name: "a melt's yield of 573.93… ‰ of what went in, 22.60 g × 581.55 ‰ ÷ 22.90 g: of 12.90 g at 60",
    items: [piece("31", ["12.90"], { fine: open(12.9, 560, 600) })],
    said: [price({}), terms(stamp("585"))],
    melts: [
      {
        metal: "gold",
        share: ratio(
          product(exactly("22.60"), exactly("581.55")),
          product(exactly("22.90"), exactly("1000")),
        ),
        melt: "M-1",
        entry: "e9",
      },
    ],
    paid: ["444.22 EUR"],
    hand: [{ lines: [{ times: ["12.90", "22.60", "581.55", "60"], over: ["22.90", "1000"] }] }],
  },
  {
    name: "narrowed by results on other pieces: paid by the whole 500 ‰ of 10.00 g until that is agreed",
    items: [piece("31", ["10.00"], { fine: { ...open(10, 570, 600), unnarrowed: open(10, 500, 650) } })],
    said: [price({})],
    paid: ["300.00 EUR"],
    hand: [{ lines: [{ times: ["10.00", "500", "60"], over: ["1000"] }] }],
    ends: ["300.00", "390.00"],
  },
  {
    name: "and by 570 ‰ once it is",
    items: [piece("31", ["10.00"], { fine: { ...open(10, 570, 600), unnarrowed: open(10, 500, 650) } })],
    said: [
      price({}),
      [
        "settlement-trust",
        {
          trust: ["laboratory", "melt", "density", "stamp", "customer"],
          pays: "low",
          narrowed: true,
          reason: "all of one maker",
          by: "KR",
        },
      ],
    ],
    paid: ["342.00 EUR"],
    hand: [{ lines: [{ times: ["10.00", "570", "60"], over: ["1000"] }] }],
    ends: ["342.00", "360.00"],
  },
  {
    name: "a magnet speaks against its density: nothing until somebody decides",
    items: [piece("31", ["10.00"], { testsAgainst: true, fine: open(10, 570, 600) })],
    said: [price({})],
    paid: ["0.00 EUR"],
    hand: [{ lines: [] }],
    leftOut: [["31", "tests-against"]],
  },
  {
    name: "the newest version of a price counts: 12.90 g × 580 ‰ × 45",
    items: [piece("31", ["12.90"])],
    said: [
      price({ price: "40" }),
      price({ price: "45", by: "KR", reason: "the board moved" }),
      terms(stamp("580")),
    ],
    paid: ["336.69 EUR"],
    hand: [{ lines: [{ times: ["12.90", "580", "45"], over: ["1000"] }] }],
  },
];

describe("settlements worked by hand, to the cent", () => {
  test.each(worked)("$name", ({ items, said, melts = [], paid, hand, leftOut = [], ends }) => {
    const { totals, left_out } = settled(items, said, melts);
    expect(hand.map(({ lines, fee, digits }) => summed(lines, fee, digits))).toEqual(
      paid.map((one) => one.split(" ")[0]),
    );
    expect(totals.map(({ paid, currency }) => `${paid} ${currency}`)).toEqual(paid);
    expect(left_out.map(({ ticket, why }) => [ticket, why])).toEqual(leftOut);
    const [first] = totals;
    const both = ends ?? [first?.paid, first?.paid];
    expect([first?.low, first?.high]).toEqual(both);
  });
});

test("a decision from before the piece was weighed, tested or assayed anew no longer counts", () => {
  const changedLater = piece("31", ["8.00"], {
    state: "excluded",
    changedSeq: 99,
    assays: [assay("gold", "916")],
  });
  expect(settled([changedLater], [price({}), decision({})]).left_out).toMatchObject([{ why: "excluded" }]);
});

test("each line says what it rests on", () => {
  const { lines } = settled(
    [piece("31", ["12.90"], { assays: [assay("gold", "585.2")], fine: open(12.9, 560, 584) })],
    [price({}), terms({ deducted_g: "0" })],
  );
  expect(lines).toMatchObject([
    {
      net_g: "12.90",
      permille: { low: "585.2" },
      fine_g: { low: "7.54908" },
      rests_on: {
        source: "laboratory",
        laboratory: "an invented laboratory",
        report: "L-7",
        beside: { low: "560.000000", high: "584.000000", fits: false },
      },
    },
  ]);
});
