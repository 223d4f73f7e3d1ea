import type { BodyOf } from "../../../server/ledger/kinds.ts";
import type { Ledger } from "../../../server/ledger/ledger.ts";
import { statement as frozen } from "../../../server/weighing/kinds/result.ts";
import { stated } from "../compute/answers.ts";

// An invented medal at an invented counter, computed by the program itself.
export const request = {
  id: "H-0412",
  method: "hung",
  dry: { readings: ["31.1035"] },
  immersed: { readings: ["28.1035", "28.1036", "28.1034", "28.1035"] },
  liquid: {
    kind: "water",
    temperature_c: 21.4,
    temperature_u_c: 0.058,
    purity: "distilled",
    dissolved_solids_mg_l: 0,
  },
  air: { temperature_c: 22, pressure_hpa: 1009, humidity_pct: 48 },
  balance: {
    readability_g: 0.0001,
    repeatability_g: 0.0001,
    immersed_repeatability_g: 0.0003,
    linearity_g: 0.0002,
  },
  hanger: { wire_mm: 0.1, zeroed: "immersed" },
  claim: "ag-925",
  confidence: 0.9545,
};

let kept: BodyOf<"result"> | undefined;

/** The result as the program computes it; computed once, as it is the same every time. */
export function computed(): BodyOf<"result"> {
  if (kept) return kept;
  const statement = frozen.parse(stated(request));
  kept = { request, statement, versions: { program: "0.1.0", metals: "1" } };
  return kept;
}

const piece: BodyOf<"piece-opened"> = {
  ticket: "H-0412",
  description: "Round medal, ship under sail",
  condition: "rim knock at six o'clock, clean",
  claim: "ag-925",
  method: "hung",
  operator: "counter 2",
  customer: "ticket holder H-0412",
  customerSupplied: { claim: "sterling, certified by the seller", mass_g: "31.1" },
};

/** The whole piece from opening to result, with one reading voided. */
export async function measurePiece(
  ledger: Ledger,
  subject: string,
  changes: Partial<BodyOf<"piece-opened">> = {},
  result: BodyOf<"result"> = computed(),
) {
  await ledger.append("piece-opened", subject, { ...piece, ...changes });
  const capture = (what: "dry" | "immersed", text: string) =>
    ledger.append("capture", subject, {
      what,
      reading: { text, unit: "g", grams: text },
      source: "balance",
      balance: "balance at the window",
      lines: [{ at: "2026-03-02T09:00:01.000Z", monotonicMs: 1, raw: `+ ${text} g\\r\\n` }],
      settled: { because: "four equal readings in 1.5 s" },
    });
  await capture("dry", "31.1035");
  const bubble = await capture("immersed", "28.0990");
  await ledger.append("voiding", subject, {
    entry: bubble.id,
    reason: "bubble under the rim",
    by: "counter 2",
  });
  await ledger.append("capture", subject, {
    what: "temperature",
    celsius: "21.4",
    source: "thermometer",
    thermometer: "glass rod 2",
    lines: [],
  });
  for (const text of request.immersed.readings) await capture("immersed", text);
  return ledger.append("result", subject, result);
}
