import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { Library } from "../../metals/library.ts";
import { methodNames } from "../../methods/index.ts";
import type { Ticket } from "../../weighing/item.ts";
import type { Entries } from "../forms/form.ts";

/** The metal a piece is said to be, or none. */
const claimEntry = ({ choice }: Entries, library: Library) =>
  choice(
    library.metals.map(({ id }) => id),
    { first: "", wrong: (claim) => message("claim.unknown", { claim }) },
  ).transform((claim) => (claim === "" ? undefined : claim));

/** What is asked before a piece is weighed, and what its customer says of it. */
export const openingForm = (library: Library) => (entry: Entries) => {
  const { typed, choice, maybeText, maybeDecimal } = entry;
  return z
    .object({
      ticket: typed(),
      nextTicket: typed(),
      description: typed(),
      method: choice(methodNames, { wrong: (method) => message("weighing.method.unknown", { method }) }),
      claim: claimEntry(entry, library),
      customer: maybeText(),
      condition: maybeText(),
      operator: maybeText(),
      statedMass: maybeDecimal({ unit: "g", unitChosen: true, displayed: true, from: 0 }),
      marks: maybeText(),
      stones: maybeText(),
    })
    .transform(({ statedMass, marks, stones, ticket: named, nextTicket, ...of }): Ticket => {
      const ticket = named || nextTicket;
      if (ticket === "") throw new Refusal("weighing.ticket.missing", {}, "ticket");
      const theirs = omitUndefined({ mass_g: statedMass, marks, stones });
      return omitUndefined({
        ...of,
        ticket,
        customerSupplied: Object.keys(theirs).length === 0 ? undefined : theirs,
      });
    });
};
