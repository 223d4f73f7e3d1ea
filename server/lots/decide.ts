import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Happened } from "../ledger/ledger.ts";
import type { LotCommand } from "./commands.ts";
import type { Lot } from "./lot.ts";
import { isFactFlag } from "./lot-check.ts";

/** What happens when this is asked of the lot: the entries to write. Pure. Throws Refusal when it is not done. */
export function decideLot(lot: Lot | undefined, command: LotCommand): Happened[] {
  if (command.do === "open-lot") {
    if (lot) throw new Refusal("lot.opened-already", { lot: lot.name }, "name");
    return [{ kind: "lot-opened", body: command.lot, key: command.subject }];
  }
  if (!lot) throw new Refusal("lot.none");
  if (lot.closed) throw new Refusal("lot.closed", { lot: lot.name });
  switch (command.do) {
    case "state-water":
      return [{ kind: "lot-water", body: { celsius: command.celsius } }];
    case "flag-item": {
      const { item, set } = command;
      const [flag, reason] = [command.flag.trim(), command.reason.trim()];
      if (flag === "") throw new Refusal("lot.flag-missing", {}, "own");
      if (isFactFlag(flag))
        throw new Refusal("lot.flag-of-the-record", { flag: message(`lots.flag-names.${flag}`) }, "flag");
      if (reason === "") throw new Refusal("lot.flag-reason-missing", {}, "reason");
      return [{ kind: "lot-flag", body: { piece: item, flag, set, reason, ...named(command.by) } }];
    }
  }
}

const named = (by: string) => (by.trim() === "" ? {} : { by: by.trim() });
