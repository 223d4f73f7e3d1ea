import type { BenchView } from "../../server/bench/view.ts";
import { BenchForm } from "./parts.tsx";

/** What hands would do at a real bench; here they move invented pieces on the simulated balance. */
export const demoDeeds = {
  dry: "Lay the piece on the pan",
  wet: "Hang it in the water",
  off: "Take everything off",
} as const;
export type DemoDeed = keyof typeof demoDeeds;

/** Buttons that stand for the hands at the simulated balance. */
export function DemoHands({ view }: { view: BenchView }) {
  return (
    <fieldset class="row">
      <legend class="unseen">Hands at the simulated balance</legend>
      {(Object.keys(demoDeeds) as DemoDeed[]).map((deed) => (
        <BenchForm key={deed} view={view} to="/demo/hands" hidden={{ deed }}>
          <button type="submit" class="plain">
            {demoDeeds[deed]}
          </button>
        </BenchForm>
      ))}
    </fieldset>
  );
}
