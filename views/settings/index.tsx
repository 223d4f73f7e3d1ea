import { MethodDrawing, type MethodName } from "../drawings.tsx";
import { Check, Csrf, errorsOf, Field, Problems, RadioCards, Select, UnitSelect } from "../forms.tsx";
import { inLocale } from "../numbers.ts";
import type { Theme } from "../page.tsx";
import { Sheet } from "../sheet.tsx";
import { type Locale, languageNames, locales } from "../words/index.ts";
import { useWords } from "../words/spoken.ts";
import { House, type HouseView } from "./house.tsx";
import { MorePages } from "./more.tsx";
import { RuleChoice } from "./rule-choice.tsx";
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
export interface SettingsView extends HouseView, SecondPersonView {
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
  /** where the ledger is, free space, last backup: in words */
  storage: readonly string[];
  /** which of the forms was kept just now */
  kept?: string;
  demo: boolean;
}

/** All settings, a form each: how it looks, how the bench weighs, who confirms, who you are. */
export function Settings(view: SettingsView) {
  const say = useWords().settings;
  return (
    <>
      <Problems heading={say.problems} problems={view.problems} />
      {view.kept !== undefined && (
        <p role="status">
          <strong>{view.kept}</strong>
        </p>
      )}
      {view.demo && <DemoEnd csrfToken={view.csrfToken} />}
      <BenchSettings {...view} />
      <SecondPersonLimits {...view} />
      <div class="columns">
        <Looks {...view} />
        <House {...view} />
      </div>
      <Sheet id="storage" title={say.storage}>
        <ul>
          {view.storage.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
        <p class="hint">{say.backup}</p>
      </Sheet>
      <MorePages />
      <p>
        <a href="/first-start">{say.askAgain}</a>
      </p>
      <p>
        <a href="/metals/own">{say.ownMetals}</a>
      </p>
    </>
  );
}

function DemoEnd({ csrfToken }: { csrfToken: string }) {
  const say = useWords().settings;
  return (
    <Sheet id="demo-end" title={say.demoEnd}>
      <form method="post" action="/settings/demo-clearing">
        <Csrf token={csrfToken} />
        <p>{say.demoEndLead}</p>
        <button type="submit">{say.beginReal}</button>
      </form>
    </Sheet>
  );
}

function Looks({ theme, locale, keys, csrfToken }: SettingsView) {
  const say = useWords().settings;
  return (
    <form method="post" action="/settings/look" class="sheet">
      <h2>{say.look}</h2>
      <Csrf token={csrfToken} />
      <Select
        name="theme"
        label={say.theme}
        value={theme}
        options={(["auto", "light", "dark"] as const).map((value) => ({ value, label: say.themes[value] }))}
      />
      <Select
        name="locale"
        label={say.locale}
        value={locale}
        options={locales.map((value) => ({
          value,
          label: `${languageNames[value]}, ${inLocale("10.49", value)}`,
        }))}
      />
      <Check name="keys" label={say.keys} checked={keys} />
      <p>
        <button type="submit">{say.keep}</button>
      </p>
    </form>
  );
}

function BenchSettings(view: SettingsView) {
  const say = useWords().settings;
  const errorOf = errorsOf(view.problems);
  const drawn = ({ unit, ...field }: NumberField) => (
    <Field key={field.name} kind="decimal" {...field} after={unit} {...errorOf(field.name)} />
  );
  return (
    <form method="post" action="/settings/bench" class="sheet">
      <h2>{say.bench}</h2>
      <Csrf token={view.csrfToken} />
      <RadioCards
        name="method"
        legend={say.method}
        value={view.method}
        cards={(["displaced", "hung", "flask"] as const).map((method) => ({
          value: method,
          label: say.methods[method],
          drawing: <MethodDrawing method={method} />,
        }))}
      />
      <div class="columns">
        <div>
          <Select
            name="metal"
            label={say.metal}
            hint={say.metalHint}
            value={view.metal}
            options={view.metals.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <Field
            kind="decimal"
            name="scaleStep"
            label={say.scaleStep}
            hint={say.scaleStepHint}
            value={view.scaleStep}
            {...errorOf("scaleStep")}
            after={
              <UnitSelect
                name="scaleStepUnit"
                label={say.scaleStepUnit}
                units={view.units}
                value={view.scaleStepUnit}
              />
            }
          />
          <Select
            name="secondUnit"
            label={say.secondUnit}
            hint={say.secondUnitHint}
            value={view.secondUnit}
            options={(["none", "ozt", "dwt"] as const).map((value) => ({
              value,
              label: say.secondUnits[value],
            }))}
          />
          {view.numbers.balance.map(drawn)}
        </div>
        <div>
          <Select
            name="water"
            label={say.water}
            value={view.water}
            options={view.waters.map(({ id, name }) => ({ value: id, label: name }))}
          />
          {view.numbers.around.map(drawn)}
        </div>
      </div>
      <RuleChoice rule={view.rule} {...errorOf("ruleMultiple")} />
      <button type="submit">{say.keepFromNow}</button>
      <p class="hint">{say.keepHint}</p>
    </form>
  );
}
