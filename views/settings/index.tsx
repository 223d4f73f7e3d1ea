import { MethodDrawing, type MethodName } from "../drawings.tsx";
import { Check, Csrf, Field, type FieldError, Problems, RadioCards, Select, UnitSelect } from "../forms.tsx";
import type { Theme } from "../page.tsx";
import { Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";
import { RuleChoice } from "./rule-choice.tsx";

/** One number of the bench, as typed, with the words around it. */
export interface NumberField {
  name: string;
  label: string;
  hint?: string;
  unit: string;
  value: string;
}

/** Settings as the page shows them; entries as typed. */
export interface SettingsView {
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
  house: string;
  address: string;
  verifiedScale: string;
  verifiedUntil: string;
  retentionYears: string;
  /** where the ledger is, free space, last backup: in words */
  storage: readonly string[];
  problems: readonly { fieldId: string; error: FieldError }[];
  /** which of the forms was kept just now */
  kept?: string;
  demo: boolean;
  csrfToken: string;
}

/** All settings, in three forms: how it looks, how the bench weighs, who you are. */
export function Settings(view: SettingsView) {
  return (
    <>
      <Problems heading="These entries need another look; nothing was changed" problems={view.problems} />
      {view.kept !== undefined && (
        <p role="status">
          <strong>{view.kept}</strong>
        </p>
      )}
      {view.demo && <DemoEnd csrfToken={view.csrfToken} />}
      <BenchSettings {...view} />
      <div class="columns">
        <Looks {...view} />
        <House {...view} />
      </div>
      <Sheet id="storage" title="Storage">
        <ul>
          {view.storage.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
        <p class="hint">Copies are made with the command underhook backup, also while the bench runs.</p>
      </Sheet>
      <p>
        <a href="/first-start">Ask the three first questions again</a>
      </p>
      <p>
        <a href="/metals/own">Metals of your own</a>
      </p>
    </>
  );
}

function DemoEnd({ csrfToken }: { csrfToken: string }) {
  return (
    <Sheet id="demo-end" title="End the demonstration">
      <form method="post" action="/settings/demo-clearing">
        <Csrf token={csrfToken} />
        <p>
          The invented pieces and their records are set aside in a folder of their own, and a real bench
          begins, empty, with readings typed in. Nothing is deleted.
        </p>
        <button type="submit">Begin a real bench</button>
      </form>
    </Sheet>
  );
}

function Looks({ theme, locale, keys, csrfToken }: SettingsView) {
  return (
    <form method="post" action="/settings/look" class="sheet">
      <h2>Look and keys</h2>
      <Csrf token={csrfToken} />
      <Select
        name="theme"
        label="Light or dark"
        value={theme}
        options={[
          { value: "auto", label: "as the device" },
          { value: "light", label: "light" },
          { value: "dark", label: "dark" },
        ]}
      />
      <Select
        name="locale"
        label="Language and numbers"
        value={locale}
        options={[
          { value: "en", label: "English, 10.49" },
          { value: "de", label: "Deutsch, 10,49" },
        ]}
      />
      <Check name="keys" label="One-key shortcuts on the bench" checked={keys} />
      <p>
        <button type="submit">Keep</button>
      </p>
    </form>
  );
}

function House(view: SettingsView) {
  const { house, address, verifiedScale, verifiedUntil, retentionYears, csrfToken } = view;
  const retention = view.problems.find(({ fieldId }) => fieldId === "retentionYears");
  return (
    <form method="post" action="/settings/house" class="sheet">
      <h2>On reports</h2>
      <Csrf token={csrfToken} />
      <Field
        name="house"
        label="Name of the house"
        hint="leave empty if you weigh for yourself"
        value={house}
      />
      <Field name="address" label="Address" value={address} />
      <Field
        name="verifiedScale"
        label="Verified scale"
        hint="number on its seal, for buying"
        value={verifiedScale}
      />
      <Field kind="date" name="verifiedUntil" label="Seal valid until" value={verifiedUntil} />
      <Field
        kind="whole"
        name="retentionYears"
        label="Keep records"
        hint="can be made longer, never shorter for what is recorded"
        after="years"
        value={retentionYears}
        {...(retention ? { error: retention.error } : {})}
      />
      <button type="submit">Keep</button>
    </form>
  );
}

function BenchSettings(view: SettingsView) {
  const errorOf = (fieldId: string) => {
    const error = view.problems.find((one) => one.fieldId === fieldId)?.error;
    return error === undefined ? {} : { error };
  };
  const drawn = ({ unit, ...field }: NumberField) => (
    <Field key={field.name} kind="decimal" {...field} after={unit} {...errorOf(field.name)} />
  );
  return (
    <form method="post" action="/settings/bench" class="sheet">
      <h2>How this bench weighs</h2>
      <Csrf token={view.csrfToken} />
      <RadioCards
        name="method"
        legend="Method a new piece begins with"
        value={view.method}
        cards={(["displaced", "hung", "flask"] as const).map((method) => ({
          value: method,
          label: method,
          drawing: <MethodDrawing method={method} locale={view.locale} />,
        }))}
      />
      <div class="columns">
        <div>
          <Select
            name="metal"
            label="Mostly seen here"
            hint="the list of claims begins with it"
            value={view.metal}
            options={view.metals.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <Field
            kind="decimal"
            name="scaleStep"
            label="Smallest step of your scale"
            hint="for the plan; on the bench the readings themselves show it"
            value={view.scaleStep}
            {...errorOf("scaleStep")}
            after={
              <UnitSelect
                name="scaleStepUnit"
                label="Unit of the smallest step"
                units={view.units}
                value={view.scaleStepUnit}
              />
            }
          />
          {view.numbers.balance.map(drawn)}
        </div>
        <div>
          <Select
            name="water"
            label="Water"
            value={view.water}
            options={view.waters.map(({ id, name }) => ({ value: id, label: name }))}
          />
          {view.numbers.around.map(drawn)}
        </div>
      </div>
      <RuleChoice rule={view.rule} {...errorOf("ruleMultiple")} />
      <button type="submit">Keep from now on</button>
      <p class="hint">
        Counts for the piece on the bench and every later one, except decision rule and confidence, which a
        piece keeps as they were when it was put on the bench. Records already written do not change.
      </p>
    </form>
  );
}
