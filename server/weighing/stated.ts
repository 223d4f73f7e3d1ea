import { methods } from "../methods/index.ts";
import type { Details } from "./details.ts";
import type { Piece } from "./piece.ts";
import { Refusal } from "./refusal.ts";
import { type DecimalMark, typedDecimal } from "./typed-reading.ts";

/** The details of a piece with what was typed into the form of its method. Throws Refusal that names the field. */
export function withStated(
  { method, details }: Pick<Piece, "method" | "details">,
  typed: Readonly<Record<string, string>>,
  ownMark?: DecimalMark,
): Details {
  const { form } = methods[method];
  if (!form) return details;
  const decimal = (field: string, text = typed[field] ?? "") => {
    const read = typedDecimal(text, field, "31.10", ownMark);
    if ("refused" in read) throw new Refusal(read.refused, field);
    return read.understood;
  };
  const kept: Details["method"] = JSON.parse(JSON.stringify(form.read(typed, decimal)));
  return { ...details, ...(kept && { method: kept }) };
}
