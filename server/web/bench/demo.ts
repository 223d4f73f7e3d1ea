import { Refusal } from "../../../calibration/refusal.ts";
import type { DemoHands } from "../../demo/hands.ts";
import type { Bench } from "../../station/bench.ts";
import { aboutOf } from "../about.ts";
import type { BenchForm } from "./bench.tsx";

/** Forms of the demonstration: an invented piece onto the bench, and hands at the simulated balance. */
export function demoRoutes(
  form: (path: string, does: BenchForm) => void,
  bench: Bench,
  hands: DemoHands,
): void {
  const deeds: Record<string, () => void> = {
    dry: hands.layOnPan,
    wet: hands.hangInWater,
    off: hands.takeOff,
  };
  form("/demo/piece", async (fields) => {
    const { piece = "" } = fields;
    const chosen = hands.choose(piece);
    if (!chosen) throw new Refusal("demo.item-unknown", { item: piece });
    const { ticket, description, method, claim } = chosen;
    const item = { ticket, description, method, claim };
    await bench.station.do({ do: "start-weighing", ...aboutOf(fields), ticket: item });
  });
  form("/demo/hands", ({ deed: name = "" }) => {
    const does = deeds[name];
    if (!does) throw new Refusal("demo.hands-unknown", { hands: name });
    if (bench.open) hands.chooseByTicket(bench.open.ticket);
    does();
  });
}
