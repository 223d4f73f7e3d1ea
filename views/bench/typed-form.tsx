import { massUnits } from "../../calibration/units.ts";
import { asIs } from "../as-is.ts";
import { useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { BenchForm } from "./parts.tsx";
import type { BenchView } from "./view.ts";

/** The field of a reading with its unit; what was refused stays in it. */
export function ReadingEntry({
  role,
  view,
  big = false,
  id = `typed-${role}`,
}: {
  role: Role;
  view: BenchView;
  big?: boolean;
  id?: string;
}) {
  const t = useTell();
  const typed = view.problem?.typed?.role === role ? view.problem.typed : {};
  return (
    <div class="wide-part">
      <label class="label" for={id}>
        {t("bench.readings.label", { role: t(`bench.roles.${role}`) })}
      </label>
      <div class={big ? "entry big" : "entry"}>
        <input
          id={id}
          name="reading"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          data-weight
          aria-describedby={big ? `step-does ${id}-hint` : `${id}-hint`}
          {...(big ? { "data-step-field": true, autofocus: true } : {})}
          value={typed.reading ?? ""}
          required
          {...(typed.reading === undefined ? {} : { "aria-invalid": "true" as const })}
        />
        <select {...asIs} id={`${id}-unit`} name="unit" aria-label={t("bench.readings.unit")}>
          {massUnits.map((unit) => (
            <option key={unit} value={unit} selected={(typed.unit ?? lastUnit(view)) === unit}>
              {unit}
            </option>
          ))}
        </select>
      </div>
      <span class="hint" id={`${id}-hint`}>
        {t("bench.readings.all-decimals")}
      </span>
    </div>
  );
}

/** A reading typed from the display beside the one way that is offered first; folded until it is asked for. */
export function TypedForm({
  role,
  view,
  again,
  id,
}: {
  role: Role;
  view: BenchView;
  again: boolean;
  /** of its field, where the page has another for the same load */
  id?: string;
}) {
  const t = useTell();
  const refused = view.problem?.typed?.role === role && view.problem.typed.reading !== undefined;
  return (
    <details class="inline" id={`${id ?? role}-typed`} open={refused || undefined} data-digits>
      <summary>
        {again
          ? t("bench.readings.type-another", { role: t(`bench.roles.${role}`) })
          : t("bench.readings.type-instead")}
      </summary>
      <BenchForm view={view} to="/bench/typed-readings" hidden={{ role }}>
        <ReadingEntry role={role} view={view} {...(id === undefined ? {} : { id })} />
        <button type="submit" class="plain">
          {t("bench.readings.enter")}
        </button>
      </BenchForm>
    </details>
  );
}

function lastUnit(view: BenchView): string {
  return view.item?.captures.at(-1)?.unit ?? "g";
}
