import { readFileSync } from "node:fs";
import type { EntryOf } from "../../ledger/entry.ts";
import { sha256 } from "../../ledger/file-beside.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { isReport, reportStanding } from "../../reports/standing.ts";
import type { Voice } from "../command.ts";
import { chainsForReading } from "../ledger-for-reading.ts";
import { type GivenTrust, trustFor } from "./trust.ts";

/**
 * Whose a printed report is, which one, and whether it still holds: 0 when it was issued as it stands, by a ledger that is
 * good by a trusted key, and nothing was amended or voided since; else 1.
 */
export async function verifyReport(
  file: string,
  { ledger: ledgerFile, trust, say }: { ledger: string | undefined; trust: GivenTrust; say: Voice },
): Promise<number> {
  const hash = sha256(readFileSync(file));
  let place = "";
  for (const chain of await chainsForReading("verify", ledgerFile)) {
    const ledger = await chain.open();
    try {
      place = ledger.place;
      const issued = (await ledger.entries({ kind: "report-issued" })).filter(isReport);
      const report = issued.find(({ body }) => body.print?.pdf === hash);
      const own = chain.name === null ? trust : await trustFor(ledger, trust);
      if (report) return await standing(ledger, report, { file, trust: own, say });
    } finally {
      await ledger.close();
    }
  }
  say.out("ledger.verify.report-unknown", { file, place, hash });
  return 1;
}

async function standing(
  ledger: Ledger,
  report: EntryOf<"report-issued">,
  { file, trust, say }: { file: string; trust: GivenTrust; say: Voice },
): Promise<number> {
  const { number, copy, by = "none" } = report.body;
  const { subject, at, bench } = report;
  const since = reportStanding(await ledger.entriesOf(subject), report);
  if (since !== null) say.out(since.code, since.params);
  say.out("ledger.verify.report", { file, number, copy, subject, bench, at, by });
  const found = await ledger.verify(trust);
  if (!found.good) {
    say.out("ledger.verify.report-not-good", { message: found.message });
    return 1;
  }
  const signed = report.seq <= found.signedUpTo;
  if (!signed) say.out("ledger.verify.report-unsigned", { row: report.seq });
  if (trust.keyId === undefined) say.out("ledger.verify.nobody-vouches");
  else say.out("ledger.verify.record-signed", { key: trust.keyId });
  return since === null && signed && trust.keyId !== undefined ? 0 : 1;
}
