import { useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { CaptureLine } from "./capture-line.tsx";
import { BenchForm } from "./parts.tsx";
import { TypedForm } from "./typed-form.tsx";
import type { BenchView, ItemView } from "./view.ts";

/** The readings of one load, each with its way to be excluded, and the ways to take one more. */
export function RoleReadings({ role, view, item }: { role: Role; view: BenchView; item: ItemView }) {
  const t = useTell();
  const captures = item.captures.filter((capture) => capture.role === role);
  return (
    <>
      {captures.length > 0 && (
        <ul class="readings">
          {captures.map((capture) => (
            <CaptureLine key={capture.id} capture={capture} view={view} />
          ))}
        </ul>
      )}
      {view.waitingFor === undefined && view.scaleName !== undefined && (
        <BenchForm view={view} to="/bench/captures" hidden={{ role }}>
          <button type="submit" class="plain" data-needs-live>
            {captures.length > 0
              ? t("bench.readings.take-again", { role: t(`bench.roles.${role}`) })
              : t("bench.readings.take", { role: t(`bench.roles.${role}`) })}
          </button>
        </BenchForm>
      )}
      <TypedForm role={role} view={view} again={captures.length > 0} id={`again-${role}`} />
    </>
  );
}
