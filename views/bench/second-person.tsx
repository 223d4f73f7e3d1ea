import { massUnits } from "../../calibration/units.ts";
import { type About, AboutFields, Csrf, Field, type FieldProblem, Problems, UnitSelect } from "../forms.tsx";
import type { Locale } from "../messages/language.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import type { Tell } from "../messages/tell.ts";
import type { Role } from "../methods/view.ts";
import { fixed, inLocale } from "../numbers.ts";
import { Rows } from "../sheet.tsx";
import type { SecondPersonView, SecondReadingView } from "./view.ts";

/** Above the record's button: that a second person must read, that one read otherwise, or that it is confirmed. */
export function SecondPersonNote({ view, inLot = false }: { view: SecondPersonView; inLot?: boolean }) {
  const t = useTell();
  const { due, confirmed, unlike } = view;
  if (due === undefined)
    return confirmed ? <p class="hint">{t("second-person.confirmed", confirmed)}</p> : null;
  return (
    <>
      {unlike === undefined ? (
        <p>{t("second-person.due", { above: due })}</p>
      ) : (
        <>
          <p>
            <strong>
              {t("second-person.differs", {
                by: unlike.by,
                readings: unlike.what.map((role) => ({
                  code: role === "temperature" ? "second-person.of-temperature" : `bench.roles.${role}`,
                  params: {},
                })),
              })}
            </strong>
          </p>
          {inLot && (
            <p>
              <a href="/">{t("second-person.differs-back")}</a>
            </p>
          )}
        </>
      )}
      <p>
        <a class={unlike === undefined ? "button large" : "button plain"} href="/bench/second-person">
          {t("second-person.hand-over")}
        </a>
      </p>
    </>
  );
}

/** Both readings of each load, side by side. */
export function SecondReadingRows({ reading }: { reading: SecondReadingView }) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Rows
      caption={t("second-person.caption")}
      empty=""
      columns={[
        { head: t("second-person.columns.what") },
        { head: t("second-person.columns.first"), number: true },
        { head: t("second-person.columns.second"), number: true },
        { head: t("second-person.columns.state") },
      ]}
      rows={[
        ...reading.readings.map((one) => {
          const within = fixed(one.withinG, one.withinG < 0.01 ? 4 : 2, locale);
          return {
            key: one.role,
            cells: [
              t(`bench.roles.${one.role}`),
              inLocale(one.first, locale),
              inLocale(one.second, locale),
              one.agrees ? (
                t("second-person.agrees", { grams: within })
              ) : (
                <strong key="s">{t("second-person.unlike", { grams: within })}</strong>
              ),
            ],
          };
        }),
        ...temperatureRow(reading, t, locale),
      ]}
    />
  );
}

function temperatureRow({ temperature: one }: SecondReadingView, t: Tell, locale: Locale) {
  if (!one) return [];
  const within = fixed(one.withinCelsius, 2, locale);
  return [
    {
      key: "temperature",
      cells: [
        t("second-person.of-temperature"),
        inLocale(one.first, locale),
        inLocale(one.second, locale),
        one.agrees ? (
          t("second-person.agrees-celsius", { celsius: within })
        ) : (
          <strong key="s">{t("second-person.unlike-celsius", { celsius: within })}</strong>
        ),
      ],
    },
  ];
}

export interface SecondPersonPageView {
  ticket: string;
  description: string;
  /** the readings to be read, in the order of the method */
  roles: readonly Role[];
  /** the water temperature was typed too */
  asksTemperature: boolean;
  /** who typed them, where the piece says it */
  operator?: string;
  /** entries as typed, when they were sent back */
  typed: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  csrfToken: string;
  about: About;
  /** where the piece is weighed */
  back: string;
}

/** The page of the second person: what to read, and nothing of what was typed before. */
export function SecondPersonPage(view: SecondPersonPageView) {
  const t = useTell();
  const { ticket, description, roles, asksTemperature, operator, typed, problems, csrfToken, about, back } =
    view;
  const entry = (name: string) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return { name, value: typed[name] ?? "", ...(error === undefined ? {} : { error }) };
  };
  return (
    <form method="post" action="/bench/second-person" class="sheet">
      <h2>
        {t("second-person.piece", { ticket })}
        {description !== "" && <small> {description}</small>}
      </h2>
      <Problems heading={t("bench.steps.doubts")} problems={problems} />
      <p>{t("second-person.lead")}</p>
      <Csrf token={csrfToken} />
      <AboutFields about={about} />
      {roles.map((role, place) => (
        <Field
          key={role}
          kind="decimal"
          {...entry(`reading-${role}`)}
          label={t("second-person.reading", { role: t(`bench.roles.${role}`) })}
          hint={t("second-person.all-decimals")}
          required
          autoFocus={place === 0}
          after={
            <UnitSelect
              name={`unit-${role}`}
              label={t("second-person.unit", { role: t(`bench.roles.${role}`) })}
              units={massUnits}
              value={typed[`unit-${role}`] ?? "g"}
            />
          }
        />
      ))}
      {asksTemperature && (
        <Field
          kind="decimal"
          {...entry("celsius")}
          label={t("second-person.temperature")}
          hint={t("second-person.all-decimals")}
          required
          after="°C"
        />
      )}
      <Field {...entry("by")} label={t("second-person.by")} required maxLength={100} />
      {operator === undefined ? (
        <Field {...entry("typedBy")} label={t("second-person.typed-by")} required maxLength={100} />
      ) : (
        <p class="hint">{t("second-person.typed-by-is", { who: operator })}</p>
      )}
      <p>
        <button type="submit">{t("second-person.send")}</button>{" "}
        <a class="button plain" href={back}>
          {t("second-person.back")}
        </a>
      </p>
    </form>
  );
}
