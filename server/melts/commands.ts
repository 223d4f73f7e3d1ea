import type { BodyOf } from "../ledger/kinds.ts";
import type { About } from "../weighing/commands.ts";

/** What can be asked of a melt. */
export type MeltCommandContent =
  | { do: "make-melt"; melt: Omit<BodyOf<"melt-made">, "lots_g"> }
  | { do: "pour-melt"; poured: BodyOf<"melt-poured"> }
  | { do: "drill-melt"; drilled: BodyOf<"melt-drilled"> }
  | { do: "state-tolerance"; tolerance: BodyOf<"melt-tolerance"> }
  | { do: "assay-melt"; assay: BodyOf<"melt-assay"> }
  | { do: "exclude-melt-assay"; excluded: BodyOf<"melt-assay-excluded"> }
  | { do: "settle-melt"; by: string }
  | { do: "reopen-melt"; reason: string; by: string; second: string };

export type MeltCommand = About & MeltCommandContent;

const meltCommands: ReadonlySet<string> = new Set<MeltCommandContent["do"]>([
  "make-melt",
  "pour-melt",
  "drill-melt",
  "state-tolerance",
  "assay-melt",
  "exclude-melt-assay",
  "settle-melt",
  "reopen-melt",
]);

/** True for a command about a melt. */
export function isMeltCommand(command: { do: string }): command is MeltCommand {
  return meltCommands.has(command.do);
}
