import type { DecimalMark } from "../../calibration/typed-number.ts";
import type { Asked } from "../../calibration/typed-quantity.ts";
import { methods } from "../methods/index.ts";
import type { Details } from "./details.ts";
import type { Item } from "./item.ts";
import { typedDecimal } from "./typed-reading.ts";

/** The details of a piece with what was typed into the form of its method. Throws Refusal that names the field. */
export function withStated(
  { method, details }: Pick<Item, "method" | "details">,
  typed: Readonly<Record<string, string>>,
  mark: DecimalMark = ".",
): Details {
  const { form } = methods[method];
  if (!form) return details;
  const decimal = (field: string, asked: Asked, text = typed[field] ?? "") =>
    typedDecimal(text, { mark, ...asked }, field);
  const kept: Details["method"] = JSON.parse(JSON.stringify(form.read(typed, decimal)));
  return { ...details, ...(kept && { method: kept }) };
}
