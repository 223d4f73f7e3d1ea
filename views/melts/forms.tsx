import type { ComponentChildren } from "preact";
import { massUnits } from "../../calibration/units.ts";
import { AboutFields, Csrf, errorsOf, Field, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { metalsPaid } from "../settlements/view.ts";
import { Fold } from "../sheet.tsx";
import { type MeltForm, type MeltView, meltSides } from "./view.ts";

/** The entries of one form, as typed when it was this one that was sent back. */
function sentBack({ sent, values, problems }: MeltView, form: MeltForm) {
  const isIt = sent === form;
  const errorOf = errorsOf(isIt ? problems : []);
  const typed = isIt ? values : {};
  const entry = (name: string) => ({
    name,
    id: `${form}-${name}`,
    value: typed[name] ?? "",
    ...errorOf(name),
  });
  return { typed, entry };
}

function Form({
  view,
  form,
  heading,
  go,
  children,
}: {
  view: MeltView;
  form: MeltForm;
  heading: string;
  go: string;
  children: ComponentChildren;
}) {
  return (
    <Fold id={form} title={heading} oneOf="melt" open={view.sent === form}>
      <form method="post" action={`/melts/${view.id}/${form}`}>
        <Csrf token={view.csrfToken} />
        <AboutFields about={view.about} />
        {children}
        <button type="submit">{go}</button>
      </form>
    </Fold>
  );
}

function By({ view, form }: { view: MeltView; form: MeltForm }) {
  const t = useTell();
  return (
    <Field {...sentBack(view, form).entry("by")} label={t("payout.terms.by")} required maxLength={100} />
  );
}

function Metal({ value }: { value: string | undefined }) {
  const t = useTell();
  return (
    <Select
      name="metal"
      label={t("payout.metal")}
      value={value ?? "gold"}
      options={metalsPaid.map((one) => ({ value: one, label: t(`lots.metals.${one}`) }))}
    />
  );
}

/** The bar as it was poured, and its record where its density was measured. */
export function BarForm(view: MeltView) {
  const t = useTell();
  const { typed, entry } = sentBack(view, "bar");
  return (
    <Form view={view} form="bar" heading={t("melts.bar")} go={t("melts.keep")}>
      <Field
        kind="decimal"
        {...entry("after")}
        label={t("melts.after")}
        required
        after={
          <UnitSelect
            name="afterUnit"
            label={t("melts.unit")}
            units={massUnits}
            value={typed.afterUnit ?? "g"}
          />
        }
      />
      <Field {...entry("bar")} label={t("melts.bar-ticket")} hint={t("melts.bar-hint")} />
      <By view={view} form="bar" />
    </Form>
  );
}

export function DrillingForm(view: MeltView) {
  const t = useTell();
  const { typed, entry } = sentBack(view, "drillings");
  return (
    <Form view={view} form="drillings" heading={t("melts.drill")} go={t("melts.keep")}>
      <Field {...entry("drilling")} label={t("melts.drilling")} required maxLength={100} />
      <Field
        kind="decimal"
        {...entry("mass")}
        label={t("melts.drilling-mass")}
        after={
          <UnitSelect
            name="massUnit"
            label={t("melts.unit")}
            units={massUnits}
            value={typed.massUnit ?? "g"}
          />
        }
      />
      <By view={view} form="drillings" />
    </Form>
  );
}

export function ToleranceForm(view: MeltView) {
  const t = useTell();
  const { typed, entry } = sentBack(view, "tolerances");
  return (
    <Form view={view} form="tolerances" heading={t("melts.tolerance")} go={t("melts.keep")}>
      <p class="hint">{t("melts.tolerance-lead")}</p>
      <div class="row">
        <Metal value={typed.metal} />
        <Field
          kind="decimal"
          {...entry("duplicates_permille")}
          label={t("melts.duplicates")}
          after="‰"
          required
        />
        <Field
          kind="decimal"
          {...entry("sides_permille")}
          label={t("melts.between-sides")}
          after="‰"
          required
        />
      </div>
      <By view={view} form="tolerances" />
      <Field
        {...entry("reason")}
        label={t("settlement.reason")}
        hint={t("melts.change-hint")}
        maxLength={400}
      />
    </Form>
  );
}

/** What a laboratory found in a drilling. */
export function AssayEntry(view: MeltView) {
  const t = useTell();
  const { typed, entry } = sentBack(view, "assays");
  return (
    <Form view={view} form="assays" heading={t("melts.assay")} go={t("melts.keep")}>
      <div class="row">
        <Field {...entry("drilling")} label={t("melts.drilling")} required />
        <Select
          name="side"
          label={t("melts.side")}
          value={typed.side ?? "house"}
          options={meltSides.map((value) => ({ value, label: t(`melts.sides.${value}`) }))}
        />
        <Metal value={typed.metal} />
      </div>
      <div class="row">
        <Field kind="decimal" {...entry("permille")} label={t("assay.fineness")} after="‰" required />
        <Field kind="decimal" {...entry("expanded")} label={t("melts.expanded")} after="‰" />
      </div>
      <div class="row">
        <Field {...entry("laboratory")} label={t("assay.laboratory")} required />
        <Field {...entry("report")} label={t("assay.report")} required />
        <Field {...entry("method")} label={t("assay.method")} required />
        <Field kind="date" {...entry("date")} label={t("melts.date")} required />
      </div>
      <By view={view} form="assays" />
    </Form>
  );
}

export function ExclusionForm({ view, id }: { view: MeltView; id: string }) {
  const t = useTell();
  return (
    <details>
      <summary>{t("assay.list.open")}</summary>
      <form method="post" action={`/melts/${view.id}/exclusions`}>
        <Csrf token={view.csrfToken} />
        <AboutFields about={view.about} />
        <input type="hidden" name="entry" value={id} />
        <Field name="by" id={`by-${id}`} label={t("payout.terms.by")} required maxLength={100} />
        <Field name="reason" id={`reason-${id}`} label={t("settlement.reason")} required maxLength={400} />
        <button type="submit" class="plain">
          {t("assay.list.go")}
        </button>
      </form>
    </details>
  );
}

export function SettlingForm(view: MeltView) {
  const t = useTell();
  return (
    <Form view={view} form="settling" heading={t("melts.settle")} go={t("melts.settle-go")}>
      <p class="hint">{t("melts.settle-lead")}</p>
      <By view={view} form="settling" />
    </Form>
  );
}

/** Final figures are opened again with a reason and a second person. */
export function ReopeningForm(view: MeltView) {
  const t = useTell();
  const { entry } = sentBack(view, "reopening");
  return (
    <Form view={view} form="reopening" heading={t("melts.reopen")} go={t("melts.reopen-go")}>
      <Field {...entry("reason")} label={t("settlement.reason")} required maxLength={400} />
      <By view={view} form="reopening" />
      <Field
        {...entry("second")}
        label={t("settlement.second")}
        hint={t("settlement.second-hint")}
        required
        maxLength={100}
      />
    </Form>
  );
}
