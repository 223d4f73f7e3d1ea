import type { BodyOf } from "../ledger/kinds.ts";
import type { About } from "../weighing/commands.ts";

/** What can be asked of a lot as a whole. */
export type LotCommandContent =
  | { do: "open-lot"; lot: BodyOf<"lot-opened"> }
  | { do: "state-water"; celsius: string }
  | { do: "flag-item"; item: string; flag: string; set: boolean; reason: string; by: string };

export type LotCommand = About & LotCommandContent;

const lotCommands: ReadonlySet<string> = new Set<LotCommandContent["do"]>([
  "open-lot",
  "state-water",
  "flag-item",
]);

/** True for a command about a lot; any other is about one weighing. */
export function isLotCommand(command: { do: string }): command is LotCommand {
  return lotCommands.has(command.do);
}
