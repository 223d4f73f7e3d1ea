import { compute, isError } from "../../../server/compute/compute.ts";
import type { Statement } from "../../../server/weighing/statement-shape.ts";

/** The example of the published contract: one troy ounce of silver at a 0.1 mg bench; readings invented. */
export const ounce = {
  id: "a1",
  method: "hung",
  dry: { readings: ["31.1035"] },
  immersed: { readings: ["28.1435"] },
  liquid: {
    kind: "water",
    temperature_c: 21.4,
    temperature_u_c: 0.058,
    purity: "distilled",
    dissolved_solids_mg_l: 0,
  },
  air: { density_kg_m3: 1.19, u_kg_m3: 0.017 },
  balance: {
    readability_g: 0.0001,
    repeatability_g: 0.0001,
    immersed_repeatability_g: 0.0003,
    linearity_g: 0,
  },
  hanger: { wire_mm: 0, zeroed: "immersed" },
  bubble_allowance_mg: 0,
  pieces: 1,
  claim: "ag-999",
  confidence: 0.9545,
};

/** The statement of a request; fails with the reason when no density follows. */
export function stated(request: unknown): Statement {
  const answer = compute(request);
  if (isError(answer)) throw new Error(`${answer.error.at}: ${JSON.stringify(answer.error.message)}`);
  if (answer.density_g_cm3 === null) throw new Error(`no density: ${JSON.stringify(answer.checks)}`);
  return answer;
}
