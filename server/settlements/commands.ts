import type { BodyOf } from "../ledger/kinds.ts";
import type { About } from "../weighing/commands.ts";

/** What can be asked of the settlement of a lot; its subject is the lot. */
export type SettlementCommandContent =
  | { do: "lock-price"; price: BodyOf<"lot-price"> }
  | { do: "state-terms"; terms: readonly BodyOf<"lot-terms">[] }
  | { do: "decide-item"; decision: BodyOf<"settlement-decision"> }
  | { do: "state-trust"; trust: BodyOf<"settlement-trust"> }
  | { do: "close-lot"; answers: Readonly<Record<string, string>>; note: string; by: string; shown?: string }
  | { do: "keep-print"; print: BodyOf<"settlement-printed"> }
  | { do: "reopen-lot"; reason: string; by: string; second: string };

export type SettlementCommand = About & SettlementCommandContent;

const settlementCommands: ReadonlySet<string> = new Set<SettlementCommandContent["do"]>([
  "lock-price",
  "state-terms",
  "decide-item",
  "state-trust",
  "close-lot",
  "keep-print",
  "reopen-lot",
]);

/** True for a command about the settlement of a lot. */
export function isSettlementCommand(command: { do: string }): command is SettlementCommand {
  return settlementCommands.has(command.do);
}
