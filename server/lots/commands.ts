import type { BodyOf } from "../ledger/kinds.ts";
import type { About } from "../weighing/commands.ts";

/** What can be asked of a lot as a whole. */
export type LotCommandContent =
  | { do: "open-lot"; lot: BodyOf<"lot-opened"> }
  | { do: "state-water"; celsius: string }
  | { do: "lock-price"; price: BodyOf<"lot-price"> }
  | { do: "flag-item"; item: string; flag: string; set: boolean; reason: string; by: string }
  | { do: "state-terms"; terms: BodyOf<"lot-terms"> }
  | { do: "close-lot"; totals: Omit<BodyOf<"lot-closed">, "by" | "note">; note: string; by: string };

export type LotCommand = About & LotCommandContent;

const lotCommands: ReadonlySet<string> = new Set<LotCommandContent["do"]>([
  "open-lot",
  "state-water",
  "lock-price",
  "flag-item",
  "state-terms",
  "close-lot",
]);

/** True for a command about a lot; any other is about one weighing. */
export function isLotCommand(command: { do: string }): command is LotCommand {
  return lotCommands.has(command.do);
}
