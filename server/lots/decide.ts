import { Refusal } from "../../calibration/refusal.ts";
import type { Happened } from "../ledger/ledger.ts";
import type { LotCommand } from "./commands.ts";
import type { Lot } from "./lot.ts";

/** What a decision on a lot rests on beside the lot itself. */
export interface LotKnown {
  /** ticket of an item of the lot that is still being weighed */
  onBench?: string;
}

/** What happens when this is asked of the lot: the entries to write. Pure. Throws Refusal when it is not done. */
export function decideLot(lot: Lot | undefined, command: LotCommand, { onBench }: LotKnown = {}): Happened[] {
  if (command.do === "open-lot") {
    if (lot) throw new Refusal("lot.opened-already", { lot: lot.name }, "name");
    return [{ kind: "lot-opened", body: command.lot, key: command.subject }];
  }
  if (!lot) throw new Refusal("lot.none");
  switch (command.do) {
    case "state-water":
      mustTakeItems(lot);
      return [{ kind: "lot-water", body: { celsius: command.celsius } }];
    case "lock-price":
      return [{ kind: "lot-price", body: command.price }];
    case "state-terms":
      return [{ kind: "lot-terms", body: command.terms }];
    case "flag-item": {
      const { item, set } = command;
      const [flag, reason] = [command.flag.trim(), command.reason.trim()];
      if (flag === "") throw new Refusal("lot.flag-missing", {}, "own");
      if (reason === "") throw new Refusal("lot.flag-reason-missing", {}, "reason");
      return [{ kind: "lot-flag", body: { piece: item, flag, set, reason, ...named(command.by) } }];
    }
    case "close-lot": {
      mustTakeItems(lot);
      if (onBench !== undefined) throw new Refusal("lot.item-on-bench", { ticket: onBench });
      const note = command.note.trim();
      const said = { ...named(command.by), ...(note === "" ? {} : { note }) };
      return [{ kind: "lot-closed", body: { ...command.totals, ...said }, key: `closed-${lot.id}` }];
    }
  }
}

/** Throws Refusal when the lot takes no more items. */
function mustTakeItems({ name, closed }: Lot): void {
  if (closed) throw new Refusal("lot.closed", { lot: name });
}

const named = (by: string) => (by.trim() === "" ? {} : { by: by.trim() });
