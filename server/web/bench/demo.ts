import type { DemoHands } from "../../demo/hands.ts";
import type { Bench } from "../../station/bench.ts";
import { Refusal } from "../../weighing/refusal.ts";
import type { BenchDeed } from "./bench.tsx";

/** Forms of the demonstration: an invented piece onto the bench, and hands at the simulated balance. */
export function demoRoutes(
  deed: (path: string, does: BenchDeed) => void,
  bench: Bench,
  hands: DemoHands,
): void {
  const deeds: Record<string, () => void> = {
    dry: hands.layOnPan,
    wet: hands.hangInWater,
    off: hands.takeOff,
  };
  deed("/demo/piece", async ({ piece = "", key = "" }) => {
    const chosen = hands.choose(piece);
    if (!chosen) throw new Refusal(`The demonstration has no piece "${piece}". Choose one of its list.`);
    const { ticket, description, method, claim } = chosen;
    await bench.openPiece({ ticket, description, method, claim }, key || bench.nextPiece);
  });
  deed("/demo/hands", ({ deed: name = "" }) => {
    const does = deeds[name];
    if (!does) throw new Refusal(`Hands cannot "${name}". Use one of the buttons.`);
    if (bench.piece && !bench.piece.closed) hands.chooseByTicket(bench.piece.ticket);
    does();
  });
}
