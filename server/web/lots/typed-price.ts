import type { LotPrice } from "../../lots/lot.ts";
import type { NumberEntries } from "../evidence/evidence-form.ts";

/** A price of fine metal as somebody found it. */
export type TypedPrice = Pick<LotPrice, "price" | "currency" | "per" | "source" | "at">;

/** Units a price can be told per. */
const pers = ["ozt", "g", "dwt"] as const;

/** Reads what a form states of a price; what is wrong with it is gathered in `numbers`. */
export function typedPrice(fields: Readonly<Record<string, string>>, numbers: NumberEntries): TypedPrice {
  const { currency = "", source = "", at = "" } = fields;
  const price = numbers.text("price", "form.field.price", { from: 0.001, to: 1_000_000, unit: "" });
  const code = currency.trim().toUpperCase();
  if (!/^[A-Z]{3}$/.test(code))
    numbers.refuse("currency", `"${currency}" is no currency. Right: its three letters, such as EUR.`);
  if (source.trim() === "")
    numbers.refuse("source", "Where does the price come from? A price without a source settles nothing.");
  if (!/\d{4}-\d{2}-\d{2}[ T]\d{2}:\d{2}/.test(at))
    numbers.refuse(
      "at",
      `"${at}" is no date and time. Right: such as 2026-03-02 14:30, with the zone if it matters.`,
    );
  return {
    price,
    currency: code,
    per: pers.find((one) => one === fields.per) ?? "ozt",
    source: source.trim(),
    at: at.trim(),
  };
}
