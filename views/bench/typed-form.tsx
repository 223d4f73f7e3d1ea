import { massUnits } from "../../calibration/units.ts";
import { asIs } from "../as-is.ts";
import { useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { BenchForm } from "./parts.tsx";
import type { BenchView } from "./view.ts";

/** A reading typed from the display; what was refused stays in its field. */
export function TypedForm({
  role,
  view,
  open,
  again,
}: {
  role: Role;
  view: BenchView;
  open: boolean;
  again: boolean;
}) {
  const t = useTell();
  const typed = view.problem?.typed?.role === role ? view.problem.typed : {};
  const id = `typed-${role}`;
  const form = (
    <BenchForm view={view} to="/bench/typed-readings" hidden={{ role }}>
      <div class="entry">
        <label class="unseen" for={id}>
          {t("bench.readings.label", { role: t(`bench.roles.${role}`) })}
        </label>
        <input
          id={id}
          name="reading"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          data-weight
          value={typed.reading ?? ""}
          required
          {...(typed.reading === undefined ? {} : { "aria-invalid": "true" as const })}
        />
        <label class="unseen" for={`${id}-unit`}>
          {t("bench.readings.unit")}
        </label>
        <select {...asIs} id={`${id}-unit`} name="unit">
          {massUnits.map((unit) => (
            <option key={unit} value={unit} selected={(typed.unit ?? lastUnit(view)) === unit}>
              {unit}
            </option>
          ))}
        </select>
        <button type="submit">{t("bench.readings.enter")}</button>
      </div>
      <span class="hint">{t("bench.readings.all-decimals")}</span>
    </BenchForm>
  );
  if (open && !again) return form;
  return (
    <details class="inline" open={typed.reading !== undefined}>
      <summary>
        {again
          ? t("bench.readings.type-another", { role: t(`bench.roles.${role}`) })
          : t("bench.readings.type-instead")}
      </summary>
      {form}
    </details>
  );
}

function lastUnit(view: BenchView): string {
  return view.item?.captures.at(-1)?.unit ?? "g";
}
