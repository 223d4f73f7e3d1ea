import type { BenchView } from "../../server/station/view.ts";
import type { Piece } from "../../server/weighing/piece.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { BenchForm } from "./parts.tsx";

/** The water temperature, typed; it can be stated anew, and the ledger keeps both. */
export function WaterForm({ view, piece, due }: { view: BenchView; piece: Piece; due: boolean }) {
  const locale = useLocale();
  const t = useTell();
  if (!due && piece.waterCelsius === undefined) return null;
  const typed = view.problem?.field === "celsius" ? view.problem.typed?.celsius : undefined;
  const form = (
    <BenchForm view={view} to="/bench/water" hidden={{ key: `${view.key}-water` }}>
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
          value={typed ?? inLocale(piece.waterCelsius ?? "", locale)}
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
      <span class="number">{inLocale(piece.waterCelsius ?? "", locale)} °C</span>{" "}
      <details class="inline" open={typed !== undefined}>
        <summary>{t("bench.readings.state-anew")}</summary>
        {form}
      </details>
    </>
  );
}
