import type { z } from "zod";
import { answerKinds } from "./kinds/answers.ts";
import { bookkeepingKinds } from "./kinds/bookkeeping.ts";
import { checkKinds } from "./kinds/checks.ts";
import { lotKinds } from "./kinds/lots.ts";
import { pieceKinds } from "./kinds/piece.ts";
import { secondPersonKinds } from "./kinds/second-person.ts";
import { specificationKinds } from "./kinds/specifications.ts";
import { ticketKinds } from "./kinds/tickets.ts";
import { weighingKinds } from "./kinds/weighing.ts";
import { LedgerTrouble } from "./trouble.ts";

/**
 * Every kind of event the ledger takes, with the schema its body must satisfy. To add a kind: put its schema in a
 * file of kinds/ and spread it here. A kind that was ever released stays, so that old ledgers can be read.
 */
export const kinds = {
  ...pieceKinds,
  ...weighingKinds,
  ...secondPersonKinds,
  ...answerKinds,
  ...checkKinds,
  ...bookkeepingKinds,
  ...specificationKinds,
  ...lotKinds,
  ...ticketKinds,
};

export type Kind = keyof typeof kinds;
export type BodyOf<K extends Kind> = z.infer<(typeof kinds)[K]>;

/** True for the name of a known kind. */
function isKind(name: string): name is Kind {
  return Object.hasOwn(kinds, name);
}

/** The body when it is right for its kind; throws LedgerTrouble naming each wrong place and what stood there. */
export function checkedBody<K extends Kind>(kind: K, body: unknown): BodyOf<K> {
  if (!isKind(kind))
    throw new LedgerTrouble(
      "refused",
      `The ledger knows no kind of entry "${String(kind)}". Known: ${Object.keys(kinds).join(", ")}. Nothing was stored.`,
    );
  const checked = kinds[kind].safeParse(body);
  if (checked.success) return checked.data as BodyOf<K>;
  const wrong = checked.error.issues.map((issue) => {
    const path = issue.path.map(String);
    const found = path.reduce<unknown>(
      (value, key) => (value as Record<string, unknown> | undefined)?.[key],
      body,
    );
    return `${path.join(".") || "body"} is ${JSON.stringify(found) ?? "missing"}: ${issue.message}`;
  });
  throw new LedgerTrouble(
    "refused",
    `A "${kind}" entry was refused and nothing was stored: ${wrong.join("; ")}. Correct it and save again.`,
  );
}
