import { messageOf } from "../../calibration/message.ts";
import type { AdjustmentRepository } from "./adjustment-repository.ts";
import type { BalanceInUse } from "./balance-in-use.ts";
import type { Bench } from "./bench.ts";

/** Keeps what each balance that is heard tells of its own adjustment, and has the bench say it. */
export function keepAdjustments(
  bench: Bench,
  balance: Pick<BalanceInUse, "onEvent">,
  adjustments: AdjustmentRepository,
): void {
  adjustments.onChange(() => void bench.refresh());
  balance.onEvent((name, event) => {
    if (event.code !== "line.notice.adjusted") return;
    // what could not be stored now is told again with the next such line, and the page says that nothing is stored
    void adjustments.heard(name, messageOf(event)).catch(() => undefined);
  });
}
