import { messageOf } from "../../calibration/message.ts";
import type { AdjustmentRepository } from "./adjustment-repository.ts";
import type { BalanceInUse } from "./balance-in-use.ts";
import type { Bench } from "./bench.ts";
import type { Scale } from "./scale.ts";

/** Keeps what each balance that is heard tells of its own adjustment, and has the bench say it. */
export function keepAdjustments(
  bench: Bench,
  balance: Pick<BalanceInUse, "beside" | "onBeside">,
  adjustments: AdjustmentRepository,
): void {
  const hear = (scale: Scale | undefined) => {
    const live = scale?.live();
    if (!scale || live?.state !== "event" || live.message.code !== "line.notice.adjusted") return;
    // what could not be stored now is told again with the next such line, and the page says that nothing is stored
    void adjustments.heard(scale.name, messageOf(live.message)).catch(() => undefined);
  };
  adjustments.onChange(() => void bench.refresh());
  bench.onLine(() => hear(bench.scale));
  balance.onBeside(() => {
    for (const { scale } of balance.beside) hear(scale);
  });
}
