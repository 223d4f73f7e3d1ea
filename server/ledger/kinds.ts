import type { z } from "zod";
import { accessKinds } from "../access/kinds.ts";
import { checkKinds } from "../checks/kinds.ts";
import { laboratoryKinds } from "../laboratory/kinds.ts";
import { lotKinds } from "../lots/kinds.ts";
import { ticketKinds } from "../lots/ticket-kinds.ts";
import { meltKinds } from "../melts/kinds.ts";
import { specificationKinds } from "../metals/specifications/kinds.ts";
import { photoKinds } from "../photos/kinds.ts";
import { reportKinds } from "../reports/kinds.ts";
import { settlementKinds } from "../settlements/kinds.ts";
import { webhookKinds } from "../webhooks/kinds.ts";
import { answerKinds } from "../weighing/kinds/answers.ts";
import { weighingKinds } from "../weighing/kinds/details.ts";
import { pieceKinds } from "../weighing/kinds/piece.ts";
import { secondPersonKinds } from "../weighing/kinds/second-person.ts";
import { bookkeepingKinds } from "./bookkeeping-kinds.ts";
import { LedgerError } from "./error.ts";

/**
 * Every kind of event the ledger takes, with the schema its body must satisfy. To add a kind: put its schema in the
 * kinds.ts of its noun and spread it here. A kind that was ever released stays, so that old ledgers can be read.
 */
export const kinds = {
  ...pieceKinds,
  ...photoKinds,
  ...laboratoryKinds,
  ...reportKinds,
  ...weighingKinds,
  ...secondPersonKinds,
  ...answerKinds,
  ...checkKinds,
  ...bookkeepingKinds,
  ...specificationKinds,
  ...lotKinds,
  ...settlementKinds,
  ...meltKinds,
  ...ticketKinds,
  ...webhookKinds,
  ...accessKinds,
};

export type Kind = keyof typeof kinds;
export type BodyOf<K extends Kind> = z.infer<(typeof kinds)[K]>;

/** True for the name of a known kind. */
function isKind(name: string): name is Kind {
  return Object.hasOwn(kinds, name);
}

/** The body when it is right for its kind; throws LedgerError naming each wrong place and what stood there. */
export function checkedBody<K extends Kind>(kind: K, body: unknown): BodyOf<K> {
  if (!isKind(kind))
    throw new LedgerError(
      "ledger.entry.unknown-kind",
      { kind: String(kind), known: Object.keys(kinds) },
      "refused",
    );
  const checked = kinds[kind].safeParse(body);
  if (checked.success) return checked.data as BodyOf<K>;
  const wrong = checked.error.issues.map((issue) => {
    const path = issue.path.map(String);
    const found = path.reduce<unknown>(
      (value, key) => (value as Record<string, unknown> | undefined)?.[key],
      body,
    );
    // what the schema says is for whoever writes a program: an entry of this program is never wrong
    return `${path.join(".") || "body"} = ${JSON.stringify(found) ?? "undefined"} (${issue.message})`;
  });
  throw new LedgerError("ledger.entry.wrong", { kind, wrong }, "refused");
}
