import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { BenchForm, typedInto } from "./parts.tsx";
import type { BenchView, ItemView } from "./view.ts";

/** The water temperature, typed; it can be stated anew, and the ledger keeps both. */
export function WaterForm({ view, item, due }: { view: BenchView; item: ItemView; due: boolean }) {
  const locale = useLocale();
  const t = useTell();
  const typed = typedInto(view.problem, "/bench/water").celsius;
  if (!due && item.waterCelsius === undefined && typed === undefined) return null;
  const form = (
    <BenchForm view={view} to="/bench/water">
      <div class="entry">
        <label class="unseen" for="celsius">
          {t("bench.readings.temperature")}
        </label>
        <input
          id="celsius"
          name="celsius"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          required
          value={typed ?? inLocale(item.waterCelsius ?? "", locale)}
          {...(typed === undefined ? {} : { "aria-invalid": "true" as const })}
        />
        <span>°C</span>
        <button type="submit" class={due ? undefined : "plain"}>
          {t("bench.readings.enter")}
        </button>
      </div>
    </BenchForm>
  );
  if (due) return form;
  return (
    <>
      <span class="number">{inLocale(item.waterCelsius ?? "", locale)} °C</span>{" "}
      <details class="inline" open={typed !== undefined}>
        <summary>{t("bench.readings.state-anew")}</summary>
        {form}
      </details>
    </>
  );
}
