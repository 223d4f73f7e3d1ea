import { Csrf, Field, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import type { MethodName, Role } from "../methods/view.ts";

export interface OfflineView {
  claims: readonly { id: string; name: string }[];
  methods: readonly MethodName[];
  /** the one chosen first */
  method: MethodName;
  /** every reading that is asked for, with the methods that need it */
  readings: readonly { role: Role; methods: readonly MethodName[] }[];
  units: readonly string[];
  csrfToken: string;
}

/** A weighing to type while the bench is out of reach. The device keeps this page; its script keeps what is typed. */
export function OfflinePage({ claims, methods, method, readings, units, csrfToken }: OfflineView) {
  const t = useTell();
  return (
    <div
      data-offline
      data-statekept={t("offline.state.kept")}
      data-statewaits={t("offline.state.waits")}
      data-staterecorded={t("offline.state.recorded")}
      data-stateopen={t("offline.state.open")}
      data-staterefused={t("offline.state.refused")}
    >
      <p>{t("offline.lead")}</p>
      <noscript>
        <p>{t("offline.no-script")}</p>
      </noscript>
      <form class="sheet" hidden>
        <Csrf token={csrfToken} />
        <Field name="ticket" label={t("bench.opening.ticket")} required maxLength={80} />
        <Field name="description" label={t("bench.opening.looks")} maxLength={400} />
        <Select
          name="claim"
          label={t("bench.opening.claim")}
          empty={t("bench.opening.no-claim")}
          options={claims.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Select
          name="method"
          label={t("bench.opening.method")}
          value={method}
          options={methods.map((name) => ({ value: name, label: t(`method.${name}.name`) }))}
        />
        <Field kind="decimal" name="celsius" label={t("lots.step.celsius")} after="°C" required />
        <UnitSelect name="unit" label={t("bench.readings.unit")} units={units} value="g" />
        {readings.map((one) => (
          <div key={one.role} data-methods={one.methods.join(" ")}>
            <Field
              kind="decimal"
              name={one.role}
              label={t("lots.step.reading", { role: t(`bench.roles.${one.role}`) })}
              required
            />
          </div>
        ))}
        <button type="submit" class="large">
          {t("offline.keep")}
        </button>
      </form>
      <h2>{t("offline.kept")}</h2>
      <p data-none>{t("offline.none")}</p>
      <ul data-kept />
      <template data-row>
        <li>
          <strong data-ticket /> <span data-state /> <span data-says />{" "}
          <a href="/records" hidden>
            {t("offline.see")}
          </a>{" "}
          <button type="button" class="plain" data-correct hidden>
            {t("offline.correct")}
          </button>{" "}
          <button type="button" class="plain" data-forget hidden>
            {t("offline.forget")}
          </button>
        </li>
      </template>
    </div>
  );
}
