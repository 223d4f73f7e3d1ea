import type { BenchView } from "../../server/station/view.ts";
import { useTell } from "../messages/spoken.ts";
import { BenchForm } from "./parts.tsx";

/** Buttons that stand for the hands at a real bench; here they move invented pieces on the simulated balance. */
export function DemoHands({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <fieldset class="row">
      <legend class="unseen">{t("bench.hands.legend")}</legend>
      {(["dry", "wet", "off"] as const).map((deed) => (
        <BenchForm key={deed} view={view} to="/demo/hands" hidden={{ deed }}>
          <button type="submit" class="plain">
            {t(`bench.hands.${deed}`)}
          </button>
        </BenchForm>
      ))}
    </fieldset>
  );
}
