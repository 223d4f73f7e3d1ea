import { message } from "../calibration/message.ts";
import { isCode } from "./messages/catalogue.ts";
import type { Locale } from "./messages/language.ts";
import { tell } from "./messages/tell.ts";

/** Causes that each load brings, as they stand after its name. */
const ofLoad =
  /^(.+), (repeatability about the drift|repeatability|resolution at zero|resolution at load|resolution|linearity|place on the pan|zero drift)$/;
/** What is known of a body or a liquid that somebody named. */
const ofBody = /^(density|mass|expansion) of (.+)$/;

/** An input of a budget in a language; one of another version by its own name. */
export function inputName(input: string, locale: Locale): string {
  const [, load, cause] = ofLoad.exec(input) ?? [];
  if (load !== undefined && cause !== undefined)
    return tell(
      message("budget.input.of-load", {
        load: named("load", load, locale),
        cause: named("cause", cause, locale),
      }),
      locale,
    );
  const [, quantity, name] = ofBody.exec(input) ?? [];
  if (name !== undefined) {
    const params = { name };
    if (quantity === "mass") return tell(message("budget.input.mass-of", params), locale);
    if (quantity === "expansion") return tell(message("budget.input.expansion-of", params), locale);
    return tell(message("budget.input.density-of", params), locale);
  }
  return named("input", input, locale);
}

/** A unit of a budget; those that are words are told. */
export function unitName(unit: string, locale: Locale): string {
  return named("unit", unit, locale);
}

function named(stem: "input" | "load" | "cause" | "unit", name: string, locale: Locale): string {
  const code = `budget.${stem}.${slugOf(name)}`;
  if (isCode(code)) return tell({ code }, locale);
  const length = `dimensions.length.${name}`;
  return isCode(length) ? tell({ code: length }, locale) : name;
}

const slugOf = (name: string) =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
