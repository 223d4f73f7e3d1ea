import type { DecimalMark } from "../../calibration/typed-number.ts";
import type { Ticket } from "./item.ts";
import { typedReading } from "./typed-reading.ts";

/** What the opening form says of a piece for its report; empty fields are left out. Throws Refusal for a mass that is none. */
export function toldOfItem(
  fields: Record<string, string>,
  ownMark?: DecimalMark,
): Pick<Ticket, "customer" | "condition" | "operator" | "customerSupplied"> {
  const said = (name: string) => {
    const text = (fields[name] ?? "").trim();
    return text === "" ? {} : { [name]: text };
  };
  const mass = fields.statedMass?.trim()
    ? typedReading(fields.statedMass, "g", { mark: ownMark ?? ".", at: "statedMass" })
    : undefined;
  const theirs = {
    ...(mass ? { mass_g: mass.text } : {}),
    ...said("marks"),
    ...said("stones"),
  };
  return {
    ...said("customer"),
    ...said("condition"),
    ...said("operator"),
    ...(Object.keys(theirs).length === 0 ? {} : { customerSupplied: theirs }),
  };
}
