import { canonicalJson } from "./canonical-json.ts";
import { contentText } from "./entry.ts";
import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";

/**
 * That one entry stands in the ledger, as general tools check it (C2SP tlog-proof): the text of the entry as extra data,
 * its index, its way up the tree (RFC 9162), and the first signed checkpoint that covers it. Throws LedgerError.
 */
export async function proofOf(ledger: Ledger, row: string): Promise<string> {
  const seq = /^[1-9]\d{0,14}$/.test(row) ? Number(row) : 0;
  const [entry] = await ledger.entries({ after: seq - 1, limit: 1 });
  if (seq === 0 || entry?.seq !== seq)
    throw new LedgerError("ledger.proof.no-row", { row, place: ledger.place }, "missing");
  const after = await ledger.entries({ after: seq, kind: "checkpoint", limit: 1000 });
  const signed = after.find(({ origin, body }) => !origin && "note" in body && body.note !== undefined);
  if (signed?.kind !== "checkpoint")
    throw new LedgerError("ledger.proof.unsigned", { row, place: ledger.place }, "refused");
  const { body, origin } = entry;
  const text = contentText({
    ...entry,
    ...{ body: canonicalJson(body), origin: origin ? canonicalJson(origin) : null },
  });
  const path = (await ledger.inclusionProofs([seq], signed.body.seq)).get(seq) ?? [];
  const lines = [
    "c2sp.org/tlog-proof@v1",
    `extra ${Buffer.from(text).toString("base64")}`,
    `index ${seq - 1}`,
    ...path.map((hash) => hash.toString("base64")),
    "",
    signed.body.note,
  ];
  return lines.join("\n");
}
