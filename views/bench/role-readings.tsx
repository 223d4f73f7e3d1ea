import { useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { CaptureLine } from "./capture-line.tsx";
import { EachLoadSwitch } from "./each-load.tsx";
import { BenchForm } from "./parts.tsx";
import { TypedForm } from "./typed-form.tsx";
import type { BenchView, ItemView } from "./view.ts";

/** The readings of one role, and the ways to take one more: from the balance, or typed. */
export function RoleReadings({
  role,
  view,
  item,
  due,
  offered = due,
}: {
  role: Role;
  view: BenchView;
  item: ItemView;
  due: boolean;
  /** may be taken now, although no step waits for it */
  offered?: boolean;
}) {
  const captures = item.captures.filter((capture) => capture.role === role);
  const taken = captures.filter(({ excluded }) => excluded === undefined).length;
  if (!offered && taken === 0 && captures.length === 0) return null;
  return (
    <>
      {captures.length > 0 && (
        <ul class="readings">
          {captures.map((capture) => (
            <CaptureLine key={capture.id} capture={capture} view={view} />
          ))}
        </ul>
      )}
      {view.waitingFor === role ? (
        <Waiting view={view} />
      ) : (
        <>
          {view.scaleName !== undefined && <TakeButton role={role} view={view} due={due} again={taken > 0} />}
          {view.scaleName !== undefined && (due || view.eachLoad?.role === role) && (
            <EachLoadSwitch role={role} view={view} />
          )}
          <TypedForm role={role} view={view} open={due && view.scaleName === undefined} again={taken > 0} />
        </>
      )}
    </>
  );
}

function TakeButton({
  role,
  view,
  due,
  again,
}: {
  role: Role;
  view: BenchView;
  due: boolean;
  again: boolean;
}) {
  const t = useTell();
  return (
    <BenchForm view={view} to="/bench/captures" hidden={{ role: role }}>
      <button
        type="submit"
        class={due ? "large" : "plain"}
        data-needs-live
        {...(due ? { "data-key": "t F9" } : {})}
      >
        {again
          ? t("bench.readings.take-again", { role: t(`bench.roles.${role}`) })
          : t("bench.readings.take", { role: t(`bench.roles.${role}`) })}{" "}
        {due && <kbd>T</kbd>}
      </button>
    </BenchForm>
  );
}

function Waiting({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <div class="row" role="status">
      <p>
        <strong>{t("bench.readings.waiting")}</strong>
      </p>
      <BenchForm view={view} to="/bench/capture-by-hand">
        <button type="submit" class="plain">
          {t("bench.readings.take-by-hand")}
        </button>
      </BenchForm>
      <BenchForm view={view} to="/bench/capture-cancelled">
        <button type="submit" class="plain">
          {t("bench.readings.do-not-take")}
        </button>
      </BenchForm>
    </div>
  );
}
