import { messageOf } from "../../calibration/message.ts";
import type { AdjustmentRepository } from "./adjustment-repository.ts";
import type { Bench } from "./bench.ts";

/** Keeps what the balance in use tells of its own adjustment, and has the bench say it. */
export function keepAdjustments(bench: Bench, adjustments: AdjustmentRepository): void {
  adjustments.onChange(() => void bench.refresh());
  bench.onLine(() => {
    const live = bench.scale?.live();
    if (!bench.scale || live?.state !== "event" || live.message.code !== "line.notice.adjusted") return;
    // what could not be stored now is told again with the next such line, and the page says that nothing is stored
    void adjustments.heard(bench.scale.name, messageOf(live.message)).catch(() => undefined);
  });
}
