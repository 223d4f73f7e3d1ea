import { useTell } from "../messages/spoken.ts";
import { BenchForm } from "./parts.tsx";
import type { BenchView } from "./view.ts";

/** Buttons that stand for the hands at a real bench; here they move invented pieces on the simulated balance. */
export function SimulatorControls({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <fieldset class="row simulator">
      <legend>{t("bench.simulator.legend")}</legend>
      {(["dry", "wet", "off"] as const).map((action) => (
        <BenchForm key={action} view={view} to="/demo/simulator" hidden={{ action }}>
          <button type="submit" class="quiet" data-passes-focus>
            {t(`bench.simulator.${action}`)}
          </button>
        </BenchForm>
      ))}
    </fieldset>
  );
}
