import { inflateSync } from "node:zlib";
import { expect, test } from "vitest";
import type { Message } from "../../../calibration/message.ts";
import { reportPdf } from "../../../server/reports/pdf.ts";
import { statementOf } from "../../../server/weighing/recorded-statement.ts";
import { tell } from "../../../views/messages/tell.ts";
import { testLedger } from "../ledger/bench-ledger.ts";
import { issued } from "./issued.ts";
import { computed, measurePiece, request } from "./measured-piece.ts";
import { closedUp, textOfPdf } from "./pdf-text.ts";

async function report() {
  const ledger = await testLedger();
  await measurePiece(ledger, "piece:1");
  return issued(ledger, "piece:1", {
    organisation: { name: "Quay Street counter" },
    by: "counter 1",
  });
}

/** Every decoded stream of a PDF, one after the other, as latin1. */
function streams(pdf: Buffer): string {
  const text = pdf.toString("latin1");
  return [...text.matchAll(/stream\r?\n([\s\S]*?)endstream/g)]
    .map(([, body = ""]) => {
      try {
        return inflateSync(Buffer.from(body, "latin1")).toString("latin1");
      } catch {
        return body;
      }
    })
    .join("\n");
}

test("the same report gives the same bytes, another copy gives others", async () => {
  const stated = await report();
  const first = await reportPdf(stated);
  expect((await reportPdf(stated)).equals(first)).toBe(true);
  expect((await reportPdf({ ...stated, copy: 2 })).equals(first)).toBe(false);
});

test("the PDF is tagged, names its language, embeds its fonts, has two pages and draws in vectors", async () => {
  const pdf = await reportPdf(await report());
  const text = pdf.toString("latin1");
  expect(text).toMatch(/\/MarkInfo/);
  expect(text).toMatch(/\/StructTreeRoot/);
  expect(text).toMatch(/\/Lang \(en\)/);
  for (const tag of ["H1", "H2", "P", "Table", "TH", "TD", "Figure"])
    expect(text, tag).toMatch(new RegExp(`/S /${tag}\\b`));
  expect(text.match(/\/FontFile2/g)).toHaveLength(2);
  expect(text.match(/\/Type \/Page\b/g)).toHaveLength(2);
  expect(text).not.toMatch(/\/Subtype \/Image/);
  expect(streams(pdf)).toMatch(/\bre\n/);
  expect(pdf.length).toBeLessThan(200_000);
});

test("another reader finds in the PDF what the record says: result, readings, budget, rule, hash, end", async () => {
  const stated = await report();
  const text = textOfPdf(await reportPdf(stated));
  const has = (part: string) => expect(text).toContain(closedUp(part));
  // from the record itself, not from the report
  const statement = statementOf(computed());
  has("31.1035 g");
  has("28.0990 g VOID");
  for (const reading of request.immersed.readings) has(`immersed${reading}g`);
  has(`k = ${statement.k?.toFixed(2)}`);
  // what would be printed as "<0.1 %" stands in one line together
  for (const { input, share } of statement.budget ?? []) if (share >= 0.0005) has(input);
  has(tell(statement.answer as Message, "en"));
  // from the report: every line that the page shows
  has(`Report ${stated.number}, copy 1`);
  for (const { quantity, value, unit, uncertainty } of stated.results)
    has(`${quantity}${value}${unit}${uncertainty ?? "–"}`);
  for (const { label, value } of [...stated.dates, ...stated.item, ...stated.conditions])
    has(`${label}${value}`);
  for (const { value } of stated.organisation) has(value);
  for (const { input, value, u, unit } of stated.budget) has(`${input}${value}${u}${unit}`);
  for (const line of [...stated.decision, ...stated.deviations, ...stated.cautions, ...stated.statements])
    has(line);
  has(`Record ${stated.record.subject}, row ${stated.record.row}`);
  has(stated.record.hash);
  has(`underhook verify record.json --key ${stated.record.keyId}`);
  has("Authorised by counter 1");
  has("page 2 of 2 · end of report");
});
