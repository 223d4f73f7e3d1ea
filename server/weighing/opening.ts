import type { BodyOf } from "../ledger/kinds.ts";
import type { Agreed, Item, Ticket } from "./item.ts";

/** The ticket, with the rule in force at this moment: one chosen later would be chosen after the value is known. */
export function openingBody(
  { ticket, description, method, claim, lot, ...stated }: Ticket,
  rule: Agreed,
): BodyOf<"piece-opened"> {
  return {
    ticket,
    description,
    method,
    claim: claim ?? null,
    ...(lot === undefined ? {} : { lot }),
    ...stated,
    rule,
  };
}

/** The ticket of a piece that was opened, to open it again. */
export function ticketOf(item: Item): Ticket {
  const { ticket, description, method, claim, lot, customer, condition, operator, customerSupplied } = item;
  return {
    ticket,
    description,
    method,
    ...(claim === undefined ? {} : { claim }),
    ...(lot === undefined ? {} : { lot }),
    ...(customer === undefined ? {} : { customer }),
    ...(condition === undefined ? {} : { condition }),
    ...(operator === undefined ? {} : { operator }),
    ...(customerSupplied === undefined ? {} : { customerSupplied }),
  };
}
