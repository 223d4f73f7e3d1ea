import { massUnits } from "../../calibration/units.ts";
import type { Role } from "../../server/methods/index.ts";
import type { BenchView } from "../../server/station/view.ts";
import { asIs } from "../as-is.ts";
import { useWords } from "../words/spoken.ts";
import { BenchForm } from "./parts.tsx";

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
  const { readings: say, roles } = useWords().bench;
  const typed = view.problem?.typed?.role === role ? view.problem.typed : {};
  const id = `typed-${role}`;
  const form = (
    <BenchForm view={view} to="/bench/typed-readings" hidden={{ role: role, key: `${view.key}-${role}` }}>
      <div class="entry">
        <label class="unseen" for={id}>
          {say.label(roles[role])}
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
          {say.unit}
        </label>
        <select {...asIs} id={`${id}-unit`} name="unit">
          {massUnits.map((unit) => (
            <option key={unit} value={unit} selected={(typed.unit ?? lastUnit(view)) === unit}>
              {unit}
            </option>
          ))}
        </select>
        <button type="submit">{say.enter}</button>
      </div>
      <span class="hint">{say.allDecimals}</span>
    </BenchForm>
  );
  if (open && !again) return form;
  return (
    <details class="inline" open={typed.reading !== undefined}>
      <summary>{again ? say.typeAnother(roles[role]) : say.typeInstead}</summary>
      {form}
    </details>
  );
}

function lastUnit(view: BenchView): string {
  return view.piece?.captures.at(-1)?.unit ?? "g";
}
