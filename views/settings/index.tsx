import { Check, Csrf, errorsOf, Field, Problems, RadioCards, Select, UnitSelect } from "../forms.tsx";
import { type Locale, languageNames, locales } from "../messages/language.ts";
import { useTell } from "../messages/spoken.ts";
import { MethodDrawing } from "../methods/drawing.tsx";
import { methodNames } from "../methods/index.ts";
import type { MethodName } from "../methods/view.ts";
import { inLocale } from "../numbers.ts";
import type { Theme } from "../page.tsx";
import { Fold, Sheet } from "../sheet.tsx";
import { MorePages } from "./more.tsx";
import { Organisation, type OrganisationView } from "./organisation.tsx";
import { Place, type PlaceView } from "./place.tsx";
import { RuleChoice, ruleKinds } from "./rule-choice.tsx";
import { SecondPersonLimits, type SecondPersonView } from "./second-person.tsx";

/** One number of the bench, as typed, with the words around it. */
export interface NumberField {
  name: string;
  label: string;
  hint?: string;
  unit: string;
  value: string;
}

/** Settings as the page shows them; entries as typed. */
export interface SettingsView extends OrganisationView, SecondPersonView, PlaceView {
  theme: Theme;
  locale: Locale;
  keys: boolean;
  method: MethodName;
  metal: string;
  metals: readonly { id: string; name: string }[];
  water: string;
  waters: readonly { id: string; name: string }[];
  /** of the balance, then of water, air and hanger */
  numbers: { balance: readonly NumberField[]; around: readonly NumberField[] };
  rule: { kind: string; multiple: string };
  scaleStep: string;
  scaleStepUnit: string;
  units: readonly string[];
  /** what masses of a lot are told in beside grams */
  secondUnit: string;
  /** instruments for other tests that are owned */
  instruments: string;
  /** where the ledger is, free space, last backup: in words */
  storage: readonly string[];
  /** which of the forms was kept just now */
  kept?: string;
  demo: boolean;
}

/** All settings, a form each: how it looks, how the bench weighs, who confirms, who you are. */
export function Settings(view: SettingsView) {
  const t = useTell();
  return (
    <>
      <Problems heading={t("settings.problems")} problems={view.problems} />
      {view.kept !== undefined && (
        <p role="status">
          <strong>{view.kept}</strong>
        </p>
      )}
      {view.demo && <DemoEnd csrfToken={view.csrfToken} />}
      <div class="settings">
        <BenchSettings {...view} />
        <SecondPersonLimits {...view} />
        <Place {...view} />
        <Appearance {...view} />
        <Organisation {...view} />
        <Fold id="storage" title={t("settings.storage")}>
          <ul>
            {view.storage.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <p class="hint">{t("settings.backup")}</p>
        </Fold>
      </div>
      <MorePages />
      <p>
        <a href="/first-start">{t("settings.ask-again")}</a>
      </p>
      <p>
        <a href="/metals/own">{t("settings.own-metals")}</a>
      </p>
    </>
  );
}

function DemoEnd({ csrfToken }: { csrfToken: string }) {
  const t = useTell();
  return (
    <Sheet id="demo-end" title={t("settings.demo-end")}>
      <form method="post" action="/settings/demo-clearing">
        <Csrf token={csrfToken} />
        <p>{t("settings.demo-end-lead")}</p>
        <button type="submit">{t("settings.begin-real")}</button>
      </form>
    </Sheet>
  );
}

function Appearance({ theme, locale, keys, csrfToken }: SettingsView) {
  const t = useTell();
  return (
    <Fold
      id="look"
      title={t("settings.look")}
      note={`${languageNames[locale]}, ${t(`settings.themes.${theme}`)}`}
    >
      <form method="post" action="/settings/look">
        <Csrf token={csrfToken} />
        <Select
          name="theme"
          label={t("settings.theme")}
          value={theme}
          options={(["auto", "light", "dark"] as const).map((value) => ({
            value,
            label: t(`settings.themes.${value}`),
          }))}
        />
        <Select
          name="locale"
          label={t("settings.locale")}
          value={locale}
          options={locales.map((value) => ({
            value,
            label: `${languageNames[value]}, ${inLocale("10.49", value)}`,
          }))}
        />
        <Check name="keys" label={t("settings.keys")} checked={keys} />
        <p>
          <button type="submit">{t("settings.keep")}</button>
        </p>
      </form>
    </Fold>
  );
}

const instruments = ["unstated", "none", "conductivity", "sound", "both"] as const;

/** How the bench weighs: one form, a group for each thing it knows of itself. */
function BenchSettings(view: SettingsView) {
  const t = useTell();
  const errorOf = errorsOf(view.problems);
  const wrong = (names: readonly string[]) => view.problems.some(({ fieldId }) => names.includes(fieldId));
  const owned = instruments.find((one) => one === view.instruments);
  const rule = ruleKinds.find((one) => one === view.rule.kind);
  const drawn = ({ unit, ...field }: NumberField) => (
    <Field key={field.name} kind="decimal" {...field} after={unit} {...errorOf(field.name)} />
  );
  return (
    <form method="post" action="/settings/bench">
      <Csrf token={view.csrfToken} />
      <Fold id="how" title={t("settings.bench")} note={t(`method.${view.method}.name`)}>
        <RadioCards
          name="method"
          legend={t("settings.method")}
          value={view.method}
          cards={methodNames.map((method) => ({
            value: method,
            label: t(`method.${method}.name`),
            drawing: <MethodDrawing method={method} />,
          }))}
        />
        <Select
          name="metal"
          label={t("settings.metal")}
          hint={t("settings.metal-hint")}
          value={view.metal}
          options={view.metals.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Select
          name="secondUnit"
          label={t("settings.second-unit")}
          hint={t("settings.second-unit-hint")}
          value={view.secondUnit}
          options={(["none", "ozt", "dwt"] as const).map((value) => ({
            value,
            label: t(`settings.second-units.${value}`),
          }))}
        />
      </Fold>
      <Fold
        id="balance"
        title={t("settings.balance")}
        note={`${view.scaleStep} ${view.scaleStepUnit}`}
        open={wrong(["scaleStep", ...view.numbers.balance.map(({ name }) => name)])}
      >
        <Field
          kind="decimal"
          name="scaleStep"
          label={t("settings.scale-step")}
          hint={t("settings.scale-step-hint")}
          value={view.scaleStep}
          {...errorOf("scaleStep")}
          after={
            <UnitSelect
              name="scaleStepUnit"
              label={t("settings.scale-step-unit")}
              units={view.units}
              value={view.scaleStepUnit}
            />
          }
        />
        {view.numbers.balance.map(drawn)}
      </Fold>
      <Fold
        id="around"
        title={t("settings.water")}
        note={view.waters.find(({ id }) => id === view.water)?.name}
        open={wrong(view.numbers.around.map(({ name }) => name))}
      >
        <Select
          name="water"
          label={t("settings.water")}
          value={view.water}
          options={view.waters.map(({ id, name }) => ({ value: id, label: name }))}
        />
        {view.numbers.around.map(drawn)}
      </Fold>
      <Fold id="means" title={t("settings.instruments")} note={owned && t(`settings.instrument.${owned}`)}>
        <Select
          name="instruments"
          label={t("settings.instruments")}
          hint={t("settings.instruments-hint")}
          value={view.instruments}
          options={instruments.map((value) => ({ value, label: t(`settings.instrument.${value}`) }))}
        />
      </Fold>
      <Fold
        id="rule"
        title={t("decision.choice")}
        note={rule && t(`decision.choices.${rule}.name`)}
        open={wrong(["ruleMultiple"])}
      >
        <RuleChoice rule={view.rule} {...errorOf("ruleMultiple")} />
      </Fold>
      <p>
        <button type="submit">{t("settings.keep-from-now")}</button>
      </p>
      <p class="hint">{t("settings.keep-hint")}</p>
    </form>
  );
}
