import { message } from "../../../calibration/message.ts";
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
  if (!/^[A-Z]{3}$/.test(code)) numbers.refuse("currency", message("price.refused.currency", { currency }));
  if (source.trim() === "") numbers.refuse("source", message("price.refused.no-source"));
  if (!/\d{4}-\d{2}-\d{2}[ T]\d{2}:\d{2}/.test(at))
    numbers.refuse("at", message("price.refused.no-moment", { at }));
  return {
    price,
    currency: code,
    per: pers.find((one) => one === fields.per) ?? "ozt",
    source: source.trim(),
    at: at.trim(),
  };
}
