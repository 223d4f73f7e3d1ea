import { Csrf, errorsOf, Field, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows } from "../sheet.tsx";

type Place = "liquid" | "air";
type Quantity = "temperature" | "pressure" | "humidity";

/** A sensor as the page shows it. */
export interface SensorRow {
  address: string;
  place: Place;
  /** what it shows at this moment, or why nothing */
  now: readonly { quantity: Quantity; text: string; unit: string; halfWidth?: number }[] | Sentence;
  /** lines as they came, newest last */
  lines: readonly string[];
  /** lines that are not read yet: what it shows is to be typed */
  needsSetUp: boolean;
  /** which number was meant, when the typed value stands at several places */
  asks?: { message: Sentence; options: readonly { at: number; text: string }[] };
}

export interface SensorsView {
  sensors: readonly SensorRow[];
  /** plugged in, and not listened to */
  found: readonly { address: string; quantities: readonly Quantity[] }[];
  problems: readonly FieldProblem[];
  typed: Readonly<Record<string, string>>;
  hands: { scanner: string; scannerLine: string; footSwitch: string };
  csrfToken: string;
}

/** The sensors beside the balance: what each shows now, its set-up, and the form that adds one. */
export function SensorsPage(view: SensorsView) {
  const t = useTell();
  return (
    <>
      <Problems heading={t("sensors.refused")} problems={view.problems} />
      <p>{t("sensors.lead")}</p>
      <SensorList {...view} />
      {view.sensors
        .filter(({ needsSetUp }) => needsSetUp)
        .map((sensor) => (
          <SetUp key={sensor.address} sensor={sensor} view={view} />
        ))}
      {view.found.length > 0 && <FoundSensors found={view.found} />}
      <NewSensor {...view} />
      <HandDevices {...view} />
    </>
  );
}

/** What each sensor shows now; looked at again every two seconds while the page is open. */
export function SensorList({ sensors, csrfToken }: Pick<SensorsView, "sensors" | "csrfToken">) {
  const t = useTell();
  return (
    <div id="sensors-now" hx-get="/settings/sensors" hx-trigger="every 2s" hx-swap="outerMorph">
      <Rows
        caption={t("sensors.list")}
        empty={t("sensors.none")}
        columns={[
          { head: t("sensors.columns.port") },
          { head: t("sensors.columns.place") },
          { head: t("sensors.columns.now") },
          { head: t("sensors.columns.line") },
          { head: t("sensors.remove") },
        ]}
        rows={sensors.map(({ address, place, now, lines }) => ({
          key: address,
          cells: [
            address,
            t(`sensors.place.${place}`),
            Array.isArray(now) ? (
              now
                .map(
                  ({ text, unit, halfWidth }) =>
                    `${text} ${unit}${halfWidth === undefined ? "" : ` ± ${halfWidth}`}`,
                )
                .join(" · ")
            ) : (
              <Sentence key="now" message={now as Sentence} />
            ),
            <code key="line">{lines.at(-1) ?? ""}</code>,
            <form key="remove" method="post" action="/settings/sensors/removal">
              <Csrf token={csrfToken} />
              <input type="hidden" name="address" value={address} />
              <button type="submit" class="plain">
                {t("sensors.remove")} <span class="unseen">{address}</span>
              </button>
            </form>,
          ],
        }))}
      />
    </div>
  );
}

const units: Readonly<Record<Quantity, readonly string[]>> = {
  temperature: ["°C", "°F", "K"],
  pressure: ["hPa", "kPa", "mbar", "mmHg"],
  humidity: ["%"],
};
const quantities = ["temperature", "pressure", "humidity"] as const;

/** Types what the sensor shows, so that its lines can be read. */
function SetUp({ sensor, view }: { sensor: SensorRow; view: SensorsView }) {
  const t = useTell();
  const { address, lines, asks } = sensor;
  const own = view.typed.address === address ? view.typed : {};
  return (
    <form method="post" action="/settings/sensors/set-up" class="sheet" id="set-up">
      <h2>{t("sensors.set-up", { address })}</h2>
      <Csrf token={view.csrfToken} />
      <input type="hidden" name="address" value={address} />
      <p>{t("sensors.set-up-lead")}</p>
      <pre class="raw">{lines.slice(-3).join("\n")}</pre>
      {quantities.map((quantity) => (
        <div class="row" key={quantity}>
          <Field
            kind="decimal"
            name={quantity}
            label={t(`sensors.quantity.${quantity}`)}
            value={own[quantity] ?? ""}
            after={
              <select name={`${quantity}-unit`} aria-label={t("sensors.unit")}>
                {units[quantity].map((unit) => (
                  <option key={unit} value={unit} selected={own[`${quantity}-unit`] === unit}>
                    {unit}
                  </option>
                ))}
              </select>
            }
          />
        </div>
      ))}
      {asks && (
        <fieldset>
          <legend>
            <Sentence message={asks.message} />
          </legend>
          {asks.options.map(({ at, text }) => (
            <label key={at}>
              <input type="radio" name="at" value={String(at)} required /> {text} (
              {t("sensors.number-of-line", { place: at + 1 })})
            </label>
          ))}
        </fieldset>
      )}
      <button type="submit">{t("sensors.learn")}</button>
    </form>
  );
}

/** Sensors that need no set-up; choosing one writes its address into the form below. */
function FoundSensors({ found }: Pick<SensorsView, "found">) {
  const t = useTell();
  return (
    <Rows
      caption={t("sensors.found")}
      empty=""
      columns={[
        { head: t("sensors.columns.port") },
        { head: t("sensors.found.columns.measures") },
        { head: t("sensors.found.choose") },
      ]}
      rows={found.map(({ address, quantities }) => ({
        key: address,
        cells: [
          address,
          quantities.map((quantity) => t("sensors.found.measures", { quantity })).join(" · "),
          <a key="choose" href={`/settings/sensors?${new URLSearchParams({ address })}#add-sensor`}>
            {t("sensors.found.choose")} <span class="unseen">{address}</span>
          </a>,
        ],
      }))}
    />
  );
}

function NewSensor({ typed, problems, found, csrfToken }: SensorsView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  // such a sensor has no line to set and sends by itself
  const isPlugged = found.some(({ address }) => address === typed.address);
  const halfWidth = (quantity: Quantity, unit: string) => (
    <Field
      kind="decimal"
      name={`half-${quantity}`}
      label={t(`sensors.half-width.${quantity}`)}
      value={typed[`half-${quantity}`] ?? ""}
      after={unit}
      {...errorOf(`half-${quantity}`)}
    />
  );
  return (
    <form method="post" action="/settings/sensors" class="sheet" id="add-sensor">
      <h2>{t("sensors.add")}</h2>
      <Csrf token={csrfToken} />
      <Field
        name="address"
        label={t("sensors.address")}
        hint={t("sensors.address-hint")}
        value={typed.address ?? ""}
        required
        {...errorOf("address")}
      />
      {isPlugged ? (
        <input type="hidden" name="line" value="9600-8n1" />
      ) : (
        <Field
          name="line"
          label={t("balances.line")}
          hint={t("balances.line-hint")}
          value={typed.line ?? "9600-8n1"}
          {...errorOf("line")}
        />
      )}
      <Select
        name="place"
        label={t("sensors.columns.place")}
        value={typed.place ?? "liquid"}
        options={(["liquid", "air"] as const).map((place) => ({
          value: place,
          label: t(`sensors.place.${place}`),
        }))}
      />
      <div class="row">
        {halfWidth("temperature", "°C")}
        {halfWidth("pressure", "hPa")}
        {halfWidth("humidity", "%")}
      </div>
      {isPlugged ? (
        <input type="hidden" name="request" value="" />
      ) : (
        <Field
          name="request"
          label={t("sensors.request")}
          hint={t("sensors.request-hint")}
          value={typed.request ?? ""}
          {...errorOf("request")}
        />
      )}
      <button type="submit">{t("sensors.listen")}</button>
    </form>
  );
}

/** A barcode reader and a foot switch with a cable of their own. */
function HandDevices({ hands, problems, csrfToken }: SensorsView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <form method="post" action="/settings/hand-devices" class="sheet">
      <h2>{t("hand-devices.heading")}</h2>
      <Csrf token={csrfToken} />
      <p>{t("hand-devices.lead")}</p>
      <Field
        name="scanner"
        label={t("hand-devices.scanner")}
        hint={t("sensors.address-hint")}
        value={hands.scanner}
        {...errorOf("scanner")}
      />
      <Field name="scannerLine" id="scanner-line" label={t("balances.line")} value={hands.scannerLine} />
      <Field
        name="footSwitch"
        label={t("hand-devices.switch")}
        hint={t("hand-devices.switch-hint")}
        value={hands.footSwitch}
        {...errorOf("footSwitch")}
      />
      <button type="submit">{t("hand-devices.keep")}</button>
    </form>
  );
}
