import { MethodDrawing, type MethodName } from "../drawings.tsx";
import { Check, Csrf, Field, type FieldError, Problems, RadioCards, Select, UnitSelect } from "../forms.tsx";
import type { Theme } from "../page.tsx";
import { Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";

/** Settings as the page shows them; entries as typed. */
export interface SettingsView {
  theme: Theme;
  locale: Locale;
  keys: boolean;
  method: MethodName;
  readability: string;
  readabilityUnit: string;
  repeatability: string;
  linearity: string;
  water: string;
  solids: string;
  altitude: string;
  bubbles: string;
  confidence: string;
  units: readonly string[];
  house: string;
  address: string;
  verifiedScale: string;
  verifiedUntil: string;
  retentionYears: string;
  /** free space, last backup: in words */
  storage: readonly string[];
  problems: readonly { fieldId: string; error: FieldError }[];
  demo: boolean;
  csrfToken: string;
}

/** All settings, in three forms: how it looks, how the bench weighs, who you are. */
export function Settings(view: SettingsView) {
  return (
    <>
      <Problems heading="These entries need another look" problems={view.problems} />
      <div class="columns">
        <Looks {...view} />
        <House {...view} />
      </div>
      <BenchSettings {...view} />
      <Sheet id="storage" title="Storage">
        <ul>
          {view.storage.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
        <p class="hint">Copies are made with the command underhook backup, also while the bench runs.</p>
      </Sheet>
    </>
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

function House({ house, address, verifiedScale, verifiedUntil, retentionYears, csrfToken }: SettingsView) {
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
  return (
    <form method="post" action="/settings/bench" class="sheet">
      <h2>How this bench weighs</h2>
      <Csrf token={view.csrfToken} />
      <RadioCards
        name="method"
        legend="Method"
        value={view.method}
        cards={(["displaced", "hung", "flask"] as const).map((method) => ({
          value: method,
          label: method,
          drawing: <MethodDrawing method={method} locale={view.locale} />,
        }))}
      />
      <div class="columns">
        <div>
          <Field
            kind="decimal"
            name="readability"
            label="Smallest step of the balance"
            value={view.readability}
            {...errorOf("readability")}
            after={
              <UnitSelect
                name="readabilityUnit"
                label="Unit of the smallest step"
                units={view.units}
                value={view.readabilityUnit}
              />
            }
          />
          <Field
            kind="decimal"
            name="repeatability"
            label="Repeatability"
            hint="standard deviation of one reading; better from the check than typed"
            after="g"
            value={view.repeatability}
            {...errorOf("repeatability")}
          />
          <Field
            kind="decimal"
            name="linearity"
            label="Linearity, plus or minus"
            after="g"
            value={view.linearity}
            {...errorOf("linearity")}
          />
          <Field
            kind="decimal"
            name="confidence"
            label="Confidence of the finding"
            after="%"
            value={view.confidence}
            {...errorOf("confidence")}
          />
        </div>
        <div>
          <Select
            name="water"
            label="Water"
            value={view.water}
            options={[
              { value: "distilled", label: "distilled or deionised" },
              { value: "boiled", label: "boiled and cooled" },
              { value: "tap", label: "from the tap" },
            ]}
          />
          <Field
            kind="decimal"
            name="solids"
            label="Dissolved solids"
            after="mg/L"
            value={view.solids}
            {...errorOf("solids")}
          />
          <Field
            kind="decimal"
            name="altitude"
            label="Height above the sea"
            after="m"
            value={view.altitude}
            {...errorOf("altitude")}
          />
          <Field
            kind="decimal"
            name="bubbles"
            label="Allowance for bubbles"
            hint="a bubble of 1 mm is 0.5 mg, of 2 mm 4 mg"
            after="mg"
            value={view.bubbles}
            {...errorOf("bubbles")}
          />
        </div>
      </div>
      <button type="submit">Keep for the next pieces</button>
      <p class="hint">Records already kept do not change.</p>
    </form>
  );
}
