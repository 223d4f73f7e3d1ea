import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished, vi } from "vitest";
import type { BodyOf } from "../../../server/ledger/kinds.ts";
import type { Ledger } from "../../../server/ledger/ledger.ts";
import { type LedgerOptions, openLedger } from "../../../server/ledger/open-ledger.ts";

/** A folder that is gone after the test. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "underhook-ledger-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that goes on one second at every look. */
export function clock(start = "2026-03-02T09:00:00.000Z"): () => Date {
  let ms = Date.parse(start);
  return () => {
    ms += 1000;
    return new Date(ms);
  };
}

/** A ledger on disk in a folder of its own. */
export async function testLedger(options: Partial<LedgerOptions> = {}): Promise<Ledger> {
  const file = options.file ?? join(testFolder(), "ledger.sqlite");
  const ledger = await openLedger({ now: clock(), bench: "window bench", ...options, file });
  onTestFinished(() => ledger.close());
  return ledger;
}

// Invented pieces of an invented counter.
export const piece: BodyOf<"piece-opened"> = {
  ticket: "H-0412",
  description: "Round medal, ship under sail, rim knock at six o'clock",
  claim: "ag-925",
  method: "hung",
  operator: "counter 2",
  customerSupplied: { claim: "sterling", marks: "lion and anchor, worn" },
};

export const dry: BodyOf<"capture"> = {
  what: "dry",
  reading: { text: "31.10", unit: "g", grams: "31.10" },
  source: "balance",
  lines: [{ at: "2026-03-02T09:00:01.000Z", monotonicMs: 1200.5, raw: "+  31.10 g\\r\\n" }],
  settled: { because: "four equal readings in 1.5 s", scatter_g: 0 },
};

export const result: BodyOf<"result"> = {
  request: { method: "hung", dry: { readings: ["31.10"] }, immersed: { readings: ["28.10"] } },
  response: {
    density_g_cm3: 10.3432,
    u_g_cm3: 0.0204,
    dof: 42,
    k: 2.06,
    expanded_g_cm3: 0.042,
    interval_g_cm3: [10.301, 10.385],
    interval_from: "gum",
    mass_g: 31.1003,
    finding: { claim: "ag-925", state: "consistent-not-unique", because: "a look-alike survives" },
    alive: ["ag-925", "ag-900"],
  },
  versions: { program: "0.1.0", water: "tanaka-2001", metals: "1" },
};

/** A piece opened, weighed and finished; gives the subject. */
export async function weigh(ledger: Ledger, subject: string, changes: Partial<BodyOf<"piece-opened">> = {}) {
  await ledger.append("piece-opened", subject, { ...piece, ...changes });
  await ledger.append("capture", subject, dry);
  return ledger.append("result", subject, result);
}

/** Listens to what a command prints; the function gives everything since it was last asked. */
export function spoken(): () => string {
  let text = "";
  for (const name of ["log", "error"] as const) {
    const spy = vi.spyOn(console, name).mockImplementation((line: string) => {
      text += `${line}\n`;
    });
    onTestFinished(() => spy.mockRestore());
  }
  return () => {
    const said = text;
    text = "";
    return said;
  };
}
