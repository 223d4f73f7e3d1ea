import type { LotCommand } from "../lots/commands.ts";
import type { MeltCommand } from "../melts/commands.ts";
import type { SettlementCommand } from "../settlements/commands.ts";
import type { WeighingCommand } from "../weighing/commands.ts";

/** Anything that can be asked of a bench. */
export type Command = WeighingCommand | LotCommand | SettlementCommand | MeltCommand;
