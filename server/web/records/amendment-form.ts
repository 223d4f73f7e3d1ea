import type { WeighingCommand } from "../../weighing/commands.ts";
import { seenOf } from "../about.ts";

/** A field of the form that puts a typed reading right begins so; the id of the reading follows. */
const readingField = "reading:";

/** What the form of an amendment asks for. Throws Refusal when it does not say which page it comes from. */
export function amendmentOf(piece: string, fields: Readonly<Record<string, string>>): WeighingCommand {
  const { by = "", reason = "", ticket = "", piece: description = "", customer = "" } = fields;
  const { celsius = "", note = "" } = fields;
  const readings = Object.fromEntries(
    Object.entries(fields).flatMap(([name, text]) =>
      name.startsWith(readingField) ? [[name.slice(readingField.length), text] as const] : [],
    ),
  );
  return {
    do: "amend",
    ...seenOf(piece, fields),
    ...{ by, reason, ticket, description, customer, celsius, readings, note },
  };
}
