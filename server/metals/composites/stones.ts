import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { codeIn } from "../catalogue-code.ts";
import stoneRows from "../data/stones.json" with { type: "json" };
import { figure } from "../sourced-figure.ts";

const density = figure(z.number().min(0.5).max(23));
const file = z.strictObject({
  stones: z.array(
    z.strictObject({ called: z.string(), wet: z.boolean(), low_g_cm3: density, high_g_cm3: density }),
  ),
});

/** Densities of stones a setting may hold, g/cm³, as ranges; `wet`: may be wetted. */
export const stoneDensities: readonly { called: Message; low: number; high: number; wet: boolean }[] = file
  .parse(stoneRows)
  .stones.map(({ called, wet, low_g_cm3, high_g_cm3 }) => ({
    called: message(codeIn(called, "stones.json")),
    low: low_g_cm3.value,
    high: high_g_cm3.value,
    wet,
  }));
