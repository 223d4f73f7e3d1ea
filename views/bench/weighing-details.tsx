import { Check, Select } from "../forms/choices.tsx";
import { Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { inLocale } from "../numbers.ts";
import type { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { BenchForm } from "./parts.tsx";
import { RoleReadings } from "./role-readings.tsx";
import type { BenchView, DetailField, DetailGroup, DetailsView, ItemView, Problem } from "./view.ts";

/** Further readings, and what may be stated about this weighing: closed until somebody needs it; opened with whatever was refused. */
export function WeighingDetails({ view, item }: { view: BenchView; item: ItemView }) {
  const t = useTell();
  const { groups, values: stated } = view.details ?? { groups: [], values: {} };
  const refused = view.problem?.from === "/bench/details" ? view.problem : undefined;
  const values = refused?.typed ?? stated;
  return (
    <>
      <Stated groups={groups} values={stated} />
      <div class="beside">
        <BesideReadings view={view} item={item} />
        <Fold id="weighing-details" title={t("weighing.heading")} open={refused !== undefined}>
          <p class="hint">{t("weighing.lead")}</p>
          <BenchForm view={view} to="/bench/details" hidden={{ method: item.method }}>
            {groups.map((group) => (
              <Group key={group.name} group={group} values={values} refused={refused} />
            ))}
            <button type="submit" class="plain">
              {t("weighing.save")}
            </button>
          </BenchForm>
        </Fold>
      </div>
    </>
  );
}

const zero = { role: "zero" } as const;
const dryAfter = { role: "dry-after" } as const;

/** Zeros about the immersion, and the piece dried and weighed again. */
function BesideReadings({ view, item }: { view: BenchView; item: ItemView }) {
  const t = useTell();
  const waits = view.waitingFor === "zero" || view.waitingFor === "dry-after";
  const typing = view.problem?.typed?.role === "zero" || view.problem?.typed?.role === "dry-after";
  return (
    <Fold title={t("weighing.beside.heading")} open={waits || typing}>
      <p class="hint">{t(`method.${item.method}.beside`)}</p>
      <RoleReadings {...zero} view={view} item={item} />
      <p class="hint">{t("weighing.beside.dry-after")}</p>
      <RoleReadings {...dryAfter} view={view} item={item} />
    </Fold>
  );
}

/** What was stated, in one line each, so that nobody has to open the form to see it. */
function Stated({ groups, values }: DetailsView) {
  const locale = useLocale();
  const t = useTell();
  const shown = groups.flatMap(({ fields }) => fields.filter(({ name }) => values[name] !== undefined));
  if (shown.length === 0) return null;
  const value = ({ name, unit }: DetailField) => {
    const text = values[name] ?? "";
    if (name === "drift") return tellId("weighing.drifts", text, locale);
    if (name === "liquid") return tellId("weighing.liquids", text, locale);
    return unit === undefined ? text : `${inLocale(text, locale)} ${unit}`.trim();
  };
  return (
    <p>
      {t("weighing.stated")}{" "}
      {shown
        .map((field) =>
          values[field.name] === "yes"
            ? t(`weighing.fields.${field.name}`)
            : `${t(`weighing.fields.${field.name}`)} ${value(field)}`,
        )
        .join("; ")}
      .
    </p>
  );
}

function Group({
  group,
  values,
  refused,
}: {
  group: DetailGroup;
  values: Readonly<Record<string, string>>;
  refused: Problem | undefined;
}) {
  const t = useTell();
  return (
    <fieldset>
      <legend>{t(`weighing.groups.${group.name}`)}</legend>
      <p class="hint">{t(`weighing.hints.${group.name}`)}</p>
      {group.fields.map((field) => (
        <Entry
          key={field.name}
          field={field}
          value={values[field.name] ?? ""}
          {...(field.name === refused?.field ? { error: refused.message } : {})}
        />
      ))}
    </fieldset>
  );
}

const liquids = ["water", "stated", "measured"] as const;
const drifts = ["none", "wet", "dried", "kept"] as const;

function Entry({ field, value, error }: { field: DetailField; value: string; error?: Sentence }) {
  const locale = useLocale();
  const t = useTell();
  const { name, unit } = field;
  const label = t(`weighing.fields.${name}`);
  if (name === "wetting-agent" || name === "paired")
    return <Check name={name} label={label} checked={value === "yes"} />;
  if (name === "liquid" || name === "drift") {
    const options =
      name === "liquid"
        ? liquids.map((value) => ({ value, label: t(`weighing.liquids.${value}`) }))
        : drifts.map((value) => ({ value, label: t(`weighing.drifts.${value}`) }));
    const first = name === "liquid" ? "water" : "none";
    return <Select name={name} label={label} options={options} value={value === "" ? first : value} />;
  }
  const wrong = error === undefined ? {} : { error };
  if (unit === undefined) return <Field name={name} label={label} value={value} maxLength={80} {...wrong} />;
  return (
    <Field
      name={name}
      label={label}
      kind={name === "pieces" ? "whole" : "decimal"}
      value={error === undefined ? inLocale(value, locale) : value}
      after={<span>{unit}</span>}
      {...wrong}
    />
  );
}
