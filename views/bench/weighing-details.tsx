import type { BenchView, Problem } from "../../server/station/view.ts";
import {
  type DetailField,
  type DetailGroup,
  groupsOf,
  numberFields,
} from "../../server/weighing/detail-fields.ts";
import { fieldsOfDetails } from "../../server/weighing/details-shown.ts";
import type { Piece } from "../../server/weighing/piece.ts";
import { Check, Select } from "../forms/choices.tsx";
import { Field } from "../forms.tsx";
import { inLocale } from "../numbers.ts";
import type { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { BenchForm } from "./parts.tsx";
import { RoleReadings } from "./role-readings.tsx";

/** What may be stated about this weighing, closed until somebody needs it; opened with whatever was refused. */
export function WeighingDetails({ view, piece }: { view: BenchView; piece: Piece }) {
  const say = useWords().weighing;
  const groups = groupsOf(piece.method);
  const names: readonly string[] = groups.flatMap(({ fields }) => fields);
  const refused = names.includes(view.problem?.field ?? "") ? view.problem : undefined;
  const values = refused?.typed ?? fieldsOfDetails(piece.details);
  return (
    <>
      <Stated piece={piece} />
      <details id="weighing-details" open={refused !== undefined || undefined}>
        <summary>{say.heading}</summary>
        <p class="hint">{say.lead}</p>
        <BenchForm
          view={view}
          to="/bench/details"
          hidden={{ key: `${view.key}-details-${piece.detailsStated}` }}
        >
          {groups.map((group) => (
            <Group key={group.name} group={group} values={values} refused={refused} />
          ))}
          <button type="submit" class="plain">
            {say.save}
          </button>
        </BenchForm>
      </details>
    </>
  );
}

const zero = { role: "zero" } as const;
const dryAfter = { role: "dry-after" } as const;

/** Zeros about the immersion, and the piece dried and weighed again. */
export function BesideReadings({ view, piece }: { view: BenchView; piece: Piece }) {
  const say = useWords().weighing.beside;
  const waits = view.waitingFor === "zero" || view.waitingFor === "dry-after";
  const typing = view.problem?.typed?.role === "zero" || view.problem?.typed?.role === "dry-after";
  const some = piece.captures.some(({ role }) => role === "zero" || role === "dry-after");
  return (
    <details open={waits || typing || some || undefined}>
      <summary>{say.heading}</summary>
      <p class="hint">{say[piece.method]}</p>
      <RoleReadings {...zero} view={view} piece={piece} due={false} offered />
      <p class="hint">{say.dryAfter}</p>
      <RoleReadings {...dryAfter} view={view} piece={piece} due={false} offered />
    </details>
  );
}

/** What was stated, in one line each, so that nobody has to open the form to see it. */
function Stated({ piece }: { piece: Piece }) {
  const locale = useLocale();
  const say = useWords().weighing;
  const values = fieldsOfDetails(piece.details);
  const shown = groupsOf(piece.method).flatMap(({ fields }): DetailField[] =>
    fields.filter((field) => values[field] !== undefined),
  );
  if (shown.length === 0) return null;
  const value = (field: DetailField) => {
    const text = values[field] ?? "";
    if (field === "drift") return say.drifts[text as keyof typeof say.drifts];
    if (field === "liquid") return say.liquids[text as keyof typeof say.liquids];
    return isNumber(field) ? `${inLocale(text, locale)} ${numberFields[field].unit}`.trim() : text;
  };
  return (
    <p>
      {say.stated}{" "}
      {shown
        .map((field) =>
          values[field] === "yes" ? say.fields[field] : `${say.fields[field]} ${value(field)}`,
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
  const say = useWords().weighing;
  return (
    <fieldset>
      <legend>{say.groups[group.name]}</legend>
      <p class="hint">{say.hints[group.name]}</p>
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

function Entry({ field, value, error }: { field: DetailField; value: string; error?: Told }) {
  const locale = useLocale();
  const { weighing: say } = useWords();
  const label = say.fields[field];
  if (field === "wetting-agent" || field === "paired")
    return <Check name={field} label={label} checked={value === "yes"} />;
  if (field === "liquid" || field === "drift") {
    const options: Record<string, string> = field === "liquid" ? say.liquids : say.drifts;
    const first = field === "liquid" ? "water" : "none";
    return (
      <Select
        name={field}
        label={label}
        options={Object.entries(options).map(([name, words]) => ({ value: name, label: words }))}
        value={value === "" ? first : value}
      />
    );
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
