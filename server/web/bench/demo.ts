import { z } from "zod";
import { Refusal } from "../../../calibration/refusal.ts";
import { tellId } from "../../../views/messages/tell.ts";
import type { DemoSimulator } from "../../demo/simulator.ts";
import type { Bench } from "../../station/bench.ts";
import { aboutIn } from "../about.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { lookOf } from "../look.ts";
import type { BenchForm } from "./bench.tsx";

const pieceForm = ({ typed }: Entries) => z.object({ piece: typed() });
const handsForm = ({ typed }: Entries) => z.object({ action: typed() });

/** Forms of the demonstration: an invented piece onto the bench, and hands at the simulated balance. */
export function demoRoutes(
  form: (path: string, does: BenchForm) => void,
  bench: Bench,
  simulator: DemoSimulator,
): void {
  const actions: Record<string, () => void> = {
    dry: simulator.layOnPan,
    wet: simulator.hangInWater,
    off: simulator.takeOff,
  };
  form("/demo/piece", async (request) => {
    const { piece } = formIn(request, pieceForm);
    const chosen = simulator.choose(piece);
    if (!chosen) throw new Refusal("demo.item-unknown", { item: piece });
    const { id, ticket, method, claim } = chosen;
    // typed for the person who chose it, so in the language of their page
    const description = tellId("demo.pieces", id, lookOf(request).locale);
    const item = { ticket, description, method, claim };
    await bench.station.do({ do: "start-weighing", ...aboutIn(request), ticket: item });
  });
  form("/demo/simulator", (request) => {
    const { action } = formIn(request, handsForm);
    const does = actions[action];
    if (!does) throw new Refusal("demo.hands-unknown", { hands: action });
    if (bench.open) simulator.chooseByTicket(bench.open.ticket);
    does();
  });
}
