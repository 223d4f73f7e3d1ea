import { z } from "zod";
import type { Entries } from "../forms/form.ts";

/** An entry of the form that puts a typed reading right begins so; the id of the reading follows. */
const readingEntry = "reading:";

/** What an amendment puts right, and who says so. */
export const amendmentForm = ({ typed }: Entries) =>
  z
    .looseObject({
      by: typed(),
      second: typed(),
      reason: typed(),
      ticket: typed(),
      piece: typed(),
      customer: typed(),
      celsius: typed(),
      note: typed(),
    })
    .transform(({ by, second, reason, ticket, piece: description, customer, celsius, note, ...others }) => {
      const readings = Object.fromEntries(
        Object.entries(others).flatMap(([name, text]) =>
          name.startsWith(readingEntry) && typeof text === "string"
            ? [[name.slice(readingEntry.length), text] as const]
            : [],
        ),
      );
      return { by, second, reason, ticket, description, customer, celsius, note, readings };
    });

/** Who declares a record void, and why. */
export const voidForm = ({ typed }: Entries) => z.object({ by: typed(), reason: typed() });

/** What was found where checks stop a record, that its readings stand, and by whom. */
export const answerForm = ({ typed, box }: Entries) =>
  z.object({ found: typed(), stands: box(), by: typed() });
