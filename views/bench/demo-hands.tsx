import type { BenchView } from "../../server/station/view.ts";
import { useWords } from "../words/spoken.ts";
import { BenchForm } from "./parts.tsx";

/** Buttons that stand for the hands at a real bench; here they move invented pieces on the simulated balance. */
export function DemoHands({ view }: { view: BenchView }) {
  const say = useWords().bench.hands;
  return (
    <fieldset class="row">
      <legend class="unseen">{say.legend}</legend>
      {(["dry", "wet", "off"] as const).map((deed) => (
        <BenchForm key={deed} view={view} to="/demo/hands" hidden={{ deed }}>
          <button type="submit" class="plain">
            {say[deed]}
          </button>
        </BenchForm>
      ))}
    </fieldset>
  );
}
