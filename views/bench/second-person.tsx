import { massUnits } from "../../calibration/units.ts";
import type { Role } from "../../server/methods/index.ts";
import type { SecondPersonView, SecondReadingView } from "../../server/station/view.ts";
import { Csrf, Field, type FieldError, Problems, UnitSelect } from "../forms.tsx";
import { fixed, inLocale } from "../numbers.ts";
import { Rows } from "../sheet.tsx";
import { useLocale, useWords } from "../words/spoken.ts";

/** Above the record's button: that a second person must read, what that person read, or that it is confirmed. */
export function SecondPersonNote({ view, inLot = false }: { view: SecondPersonView; inLot?: boolean }) {
  const say = useWords().secondPerson;
  const { due, last } = view;
  if (due === undefined) return last ? <p class="hint">{say.confirmed(last.by, last.when)}</p> : null;
  return (
    <>
      {last === undefined ? (
        <p>{say.due(due)}</p>
      ) : (
        <>
          <p>
            <strong>{say.differs(last.by)}</strong>
          </p>
          <SecondReadingRows reading={last} />
          {inLot && (
            <p>
              <a href="/">{say.differsBack}</a>
            </p>
          )}
        </>
      )}
      <p>
        <a class={last === undefined ? "button large" : "button plain"} href="/bench/second-person">
          {say.handOver}
        </a>
      </p>
    </>
  );
}

/** Both readings of each load, side by side. */
export function SecondReadingRows({ reading }: { reading: SecondReadingView }) {
  const locale = useLocale();
  const { secondPerson: say, bench } = useWords();
  const { what, first, second, state } = say.columns;
  return (
    <Rows
      caption={say.caption}
      empty=""
      columns={[
        { head: what },
        { head: first, number: true },
        { head: second, number: true },
        { head: state },
      ]}
      rows={reading.readings.map((one) => {
        const within = fixed(one.withinG, one.withinG < 0.01 ? 4 : 2, locale);
        return {
          key: one.role,
          cells: [
            bench.roles[one.role],
            inLocale(one.first, locale),
            inLocale(one.second, locale),
            one.agrees ? say.agrees(within) : <strong key="s">{say.unlike(within)}</strong>,
          ],
        };
      })}
    />
  );
}

export interface SecondPersonPageView {
  ticket: string;
  description: string;
  /** the readings to be read, in the order of the method */
  roles: readonly Role[];
  /** who typed them, where the piece says it */
  operator?: string;
  /** entries as typed, when they were sent back */
  typed: Readonly<Record<string, string>>;
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
  key: string;
  /** where the piece is weighed */
  back: string;
}

/** The page of the second person: what to read, and nothing of what was typed before. */
export function SecondPersonPage(view: SecondPersonPageView) {
  const { secondPerson: say, bench } = useWords();
  const { ticket, description, roles, operator, typed, problems, csrfToken, key, back } = view;
  const entry = (name: string) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return { name, value: typed[name] ?? "", ...(error === undefined ? {} : { error }) };
  };
  return (
    <form method="post" action="/bench/second-person" class="sheet">
      <h2>
        {say.piece(ticket)}
        {description !== "" && <small> {description}</small>}
      </h2>
      <Problems heading={bench.steps.doubts} problems={problems} />
      <p>{say.lead}</p>
      <Csrf token={csrfToken} />
      <input type="hidden" name="key" value={key} />
      {roles.map((role, place) => (
        <Field
          key={role}
          kind="decimal"
          {...entry(`reading-${role}`)}
          label={say.reading(bench.roles[role])}
          hint={say.allDecimals}
          required
          autoFocus={place === 0}
          after={
            <UnitSelect
              name={`unit-${role}`}
              label={say.unit(bench.roles[role])}
              units={massUnits}
              value={typed[`unit-${role}`] ?? "g"}
            />
          }
        />
      ))}
      <Field {...entry("by")} label={say.by} required maxLength={100} />
      {operator === undefined ? (
        <Field {...entry("typedBy")} label={say.typedBy} required maxLength={100} />
      ) : (
        <p class="hint">{say.typedByIs(operator)}</p>
      )}
      <p>
        <button type="submit">{say.send}</button>{" "}
        <a class="button plain" href={back}>
          {say.back}
        </a>
      </p>
    </form>
  );
}
