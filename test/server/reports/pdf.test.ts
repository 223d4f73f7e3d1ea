import { inflateSync } from "node:zlib";
import { expect, test } from "vitest";
import { issueReport } from "../../../server/reports/issue.ts";
import { reportPdf } from "../../../server/reports/pdf.ts";
import { testLedger } from "../ledger/bench-ledger.ts";
import { measurePiece } from "./measured-piece.ts";

async function report() {
  const ledger = await testLedger();
  await measurePiece(ledger, "piece:1");
  return issueReport(ledger, "piece:1", {
    house: { name: "Quay Street counter" },
    authorisedBy: "counter 1",
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
