import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { BenchForm, typedInto } from "./parts.tsx";
import type { BenchView, ItemView } from "./view.ts";

/** The field of the water temperature; large while its step is due. */
export function WaterEntry({ view, item, due }: { view: BenchView; item: ItemView; due: boolean }) {
  const locale = useLocale();
  const t = useTell();
  const typed = typedInto(view.problem, "/bench/water").celsius;
  return (
    <div class="wide-part">
      <label class="label" for="celsius">
        {t("bench.readings.temperature")}
      </label>
      <div class={due ? "entry big" : "entry"}>
        <input
          id="celsius"
          name="celsius"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          required
          {...(due ? { "data-step-field": true, autofocus: true, "aria-describedby": "step-does" } : {})}
          value={typed ?? inLocale(item.waterCelsius ?? "", locale)}
          {...(typed === undefined ? {} : { "aria-invalid": "true" as const })}
        />
        <span>°C</span>
      </div>
    </div>
  );
}

/** The water temperature stated anew; the ledger keeps both. */
export function WaterAnew({ view, item }: { view: BenchView; item: ItemView }) {
  const t = useTell();
  return (
    <BenchForm view={view} to="/bench/water">
      <WaterEntry view={view} item={item} due={false} />
      <button type="submit" class="plain">
        {t("bench.readings.enter")}
      </button>
    </BenchForm>
  );
}
