import type { BenchView, Problem } from "../../server/station/view.ts";
import {
  type DetailField,
  type DetailGroup,
  groupsOf,
  numberFields,
} from "../../server/weighing/detail-fields.ts";
import { fieldsOfDetails } from "../../server/weighing/details-shown.ts";
import type { Item } from "../../server/weighing/item.ts";
import { Check, Select } from "../forms/choices.tsx";
import { Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { inLocale } from "../numbers.ts";
import type { Told } from "../told.tsx";
import { BenchForm } from "./parts.tsx";
import { RoleReadings } from "./role-readings.tsx";

/** What may be stated about this weighing, closed until somebody needs it; opened with whatever was refused. */
export function WeighingDetails({ view, item }: { view: BenchView; item: Item }) {
  const t = useTell();
  const groups = groupsOf(item.method);
  const refused = view.problem?.from === "/bench/details" ? view.problem : undefined;
  const values = refused?.typed ?? fieldsOfDetails(item.details);
  return (
    <>
      <Stated item={item} />
      <details id="weighing-details" open={refused !== undefined || undefined}>
        <summary>{t("weighing.heading")}</summary>
        <p class="hint">{t("weighing.lead")}</p>
        <BenchForm view={view} to="/bench/details" hidden={{ method: item.method }}>
          {groups.map((group) => (
            <Group key={group.name} group={group} values={values} refused={refused} />
          ))}
          <button type="submit" class="plain">
            {t("weighing.save")}
          </button>
        </BenchForm>
      </details>
    </>
  );
}

const zero = { role: "zero" } as const;
const dryAfter = { role: "dry-after" } as const;

/** Zeros about the immersion, and the piece dried and weighed again. */
export function BesideReadings({ view, item }: { view: BenchView; item: Item }) {
  const t = useTell();
  const waits = view.waitingFor === "zero" || view.waitingFor === "dry-after";
  const typing = view.problem?.typed?.role === "zero" || view.problem?.typed?.role === "dry-after";
  const some = item.captures.some(({ role }) => role === "zero" || role === "dry-after");
  return (
    <details open={waits || typing || some || undefined}>
      <summary>{t("weighing.beside.heading")}</summary>
      <p class="hint">{t(`method.${item.method}.beside`)}</p>
      <RoleReadings {...zero} view={view} item={item} due={false} offered />
      <p class="hint">{t("weighing.beside.dry-after")}</p>
      <RoleReadings {...dryAfter} view={view} item={item} due={false} offered />
    </details>
  );
}

/** What was stated, in one line each, so that nobody has to open the form to see it. */
function Stated({ item }: { item: Item }) {
  const locale = useLocale();
  const t = useTell();
  const values = fieldsOfDetails(item.details);
  const shown = groupsOf(item.method).flatMap(({ fields }): DetailField[] =>
    fields.filter((field) => values[field] !== undefined),
  );
  if (shown.length === 0) return null;
  const value = (field: DetailField) => {
    const text = values[field] ?? "";
    if (field === "drift") return tellId("weighing.drifts", text, locale);
    if (field === "liquid") return tellId("weighing.liquids", text, locale);
    return isNumber(field) ? `${inLocale(text, locale)} ${numberFields[field].unit}`.trim() : text;
  };
  return (
    <p>
      {t("weighing.stated")}{" "}
      {shown
        .map((field) =>
          values[field] === "yes"
            ? t(`weighing.fields.${field}`)
            : `${t(`weighing.fields.${field}`)} ${value(field)}`,
        )
        .join("; ")}
      .
    </p>
  );
}

const isNumber = (field: DetailField): field is keyof typeof numberFields =>
  Object.hasOwn(numberFields, field);

function Group({
  group,
  values,
  refused,
}: {
  group: DetailGroup;
  values: Record<string, string>;
  refused: Problem | undefined;
}) {
  const t = useTell();
  return (
    <fieldset>
      <legend>{t(`weighing.groups.${group.name}`)}</legend>
      <p class="hint">{t(`weighing.hints.${group.name}`)}</p>
      {group.fields.map((field) => (
        <Entry
          key={field}
          field={field}
          value={values[field] ?? ""}
          {...(field === refused?.field ? { error: refused.says } : {})}
        />
      ))}
    </fieldset>
  );
}

const liquids = ["water", "stated", "measured"] as const;
const drifts = ["none", "wet", "dried", "kept"] as const;

function Entry({ field, value, error }: { field: DetailField; value: string; error?: Told }) {
  const locale = useLocale();
  const t = useTell();
  const label = t(`weighing.fields.${field}`);
  if (field === "wetting-agent" || field === "paired")
    return <Check name={field} label={label} checked={value === "yes"} />;
  if (field === "liquid" || field === "drift") {
    const options =
      field === "liquid"
        ? liquids.map((value) => ({ value, label: t(`weighing.liquids.${value}`) }))
        : drifts.map((value) => ({ value, label: t(`weighing.drifts.${value}`) }));
    const first = field === "liquid" ? "water" : "none";
    return <Select name={field} label={label} options={options} value={value === "" ? first : value} />;
  }
  const wrong = error === undefined ? {} : { error };
  if (!isNumber(field)) return <Field name={field} label={label} value={value} maxLength={80} {...wrong} />;
  return (
    <Field
      name={field}
      label={label}
      kind={field === "pieces" ? "whole" : "decimal"}
      value={error === undefined ? inLocale(value, locale) : value}
      after={<span>{numberFields[field].unit}</span>}
      {...wrong}
    />
  );
}
