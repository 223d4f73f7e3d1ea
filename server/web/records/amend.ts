import type { Evaluate } from "../../compute/evaluation.ts";
import { checkedBody } from "../../ledger/kinds.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { amendedResult } from "./amended-result.ts";

/** A field of the form that puts a typed reading right begins so; the id of the reading follows. */
const readingField = "reading:";

/**
 * Amends a record: a further entry with name and reason that says what is now stated. A reading that is put right is
 * declared void and stays; the right one is a new entry behind it. The same step again stores nothing twice.
 * Throws Refusal or LedgerTrouble; what is refused in words leaves the ledger as it was.
 */
export async function amend(
  ledger: Ledger,
  evaluate: Evaluate,
  piece: string,
  fields: Record<string, string>,
): Promise<void> {
  const said = (name: string) => (fields[name] ?? "").trim();
  const [by, reason, celsius, note] = [said("by"), said("reason"), said("celsius"), said("note")];
  const changed = Object.fromEntries(
    Object.entries({ ticket: said("ticket"), description: said("piece"), customer: said("customer") }).filter(
      ([, value]) => value !== "",
    ),
  );
  const readings = Object.fromEntries(
    Object.entries(fields).flatMap(([name, text]) =>
      name.startsWith(readingField) && text.trim() !== ""
        ? [[name.slice(readingField.length), text.trim()] as const]
        : [],
    ),
  );
  const key = (end: string) => (fields.step === undefined ? {} : { key: `${fields.step}${end}` });
  if (fields.step !== undefined && (await ledger.entry(fields.step)) !== null) return;
  const anew =
    celsius === "" && Object.keys(readings).length === 0
      ? undefined
      : await amendedResult(await ledger.entriesOf(piece), { celsius, readings, by }, evaluate);
  const body = {
    replaces: `result-${piece}`,
    reason,
    by,
    ...(Object.keys(changed).length > 0 ? { piece: changed } : {}),
    ...(anew ? { result: anew.result } : {}),
  };
  checkedBody("amendment", body);
  for (const { capture, text, grams } of anew?.readings ?? []) {
    const reading = { text, unit: capture.unit, grams };
    const settled = { by: "typed", because: "typed by a person" };
    await ledger.append(
      "capture",
      piece,
      {
        what: capture.role,
        reading,
        source: "typed",
        balance: capture.balance,
        lines: [],
        settled,
        operator: by,
      },
      key(`-typed-${capture.id}`),
    );
    await ledger.append("voiding", piece, { entry: capture.id, reason, by }, key(`-void-${capture.id}`));
  }
  await ledger.append("amendment", piece, body, key(""));
  if (note !== "") await ledger.append("note", piece, { text: note, by }, key("-note"));
}
