import { Csrf, Field, type FieldProblem, Problems, RadioCards, TextArea } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { codeMark, Sentence } from "../sentence.tsx";
import { Rows, Sheet } from "../sheet.tsx";

const listNames = ["weighings", "tickets", "specifications", "metals"] as const;
export type ListName = (typeof listNames)[number];

export interface ImportView {
  /** headings of every list, and whether each must be there */
  headings: Readonly<Record<ListName, readonly { name: string; needed: boolean; also: readonly string[] }[]>>;
  list: ListName;
  text: string;
  from: string;
  problems: readonly FieldProblem[];
  /** rows that were written; where it was stopped, how many the list has */
  taken: { list: ListName; count: number; stoppedOf?: number } | undefined;
  csrfToken: string;
}

/** Choosing a list: a file or pasted lines, and where they come from. */
export function ImportPage(view: ImportView) {
  const t = useTell();
  return (
    <>
      <Problems heading={t("imports.refused")} problems={view.problems} />
      {view.taken && (
        <p role="status">
          <strong>
            {t("imports.taken", { count: view.taken.count, list: t(`imports.lists.${view.taken.list}`) })}
          </strong>{" "}
          {t("imports.stood-already")}{" "}
          {view.taken.stoppedOf !== undefined && t("imports.stopped", { rows: view.taken.stoppedOf })}
        </p>
      )}
      <p>{t("imports.lead")}</p>
      <form method="post" action="/imports" enctype="multipart/form-data" class="sheet">
        <Csrf token={view.csrfToken} />
        <RadioCards
          name="list"
          legend={t("imports.list")}
          value={view.list}
          cards={listNames.map((list) => ({
            value: list,
            label: t(`imports.lists.${list}`),
          }))}
        />
        <div class="field">
          <label for="file">{t("imports.file")}</label>
          <input type="file" id="file" name="file" accept=".csv,.tsv,.txt,text/csv,text/plain" />
        </div>
        <TextArea name="text" label={t("imports.text")} value={view.text} rows={6} />
        <Field
          name="from"
          label={t("imports.from")}
          hint={t("imports.from-hint")}
          value={view.from}
          maxLength={200}
          required
        />
        <button type="submit">{t("imports.look")}</button>
      </form>
      {listNames.map((list) => (
        <details key={list}>
          <summary>
            {t("imports.columns")}: {t(`imports.lists.${list}`)}
          </summary>
          <p class="raw">{view.headings[list].map(({ name }) => name).join(",")}</p>
          <ul>
            {view.headings[list].map(({ name, needed, also }) => (
              <li key={name}>
                {name}: {needed ? t("imports.needed") : t("imports.may-be-missing")}
                {also.length > 0 && <small> {t("imports.also", { words: also.join(", ") })}</small>}
              </li>
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}

export interface PreviewView {
  list: ListName;
  from: string;
  headings: readonly string[];
  rows: readonly { line: number; cells: readonly string[] }[];
  /** how many rows are right; the first of them are in `rows` */
  right: number;
  refused: readonly { line: number; column: string; value: string; message: Sentence }[];
  /** how many cells are refused; the first of them are in `refused` */
  refusedCount: number;
  leftOut: readonly string[];
  /** by which the list is held until it is taken over */
  held: string;
  csrfToken: string;
}

/** What would be taken over, with every refused cell by its line and column. */
export function PreviewPage(view: PreviewView) {
  const t = useTell();
  const { right, refused, refusedCount, leftOut } = view;
  return (
    <>
      <p>
        <strong>{t("imports.good", { count: right })}</strong>{" "}
        {refusedCount > 0 && t("imports.bad", { count: refusedCount })}
      </p>
      {leftOut.length > 0 && <p>{t("imports.left-out", { names: leftOut.join(", ") })}</p>}
      {refusedCount > 0 && (
        <Sheet id="refused" title={t("imports.refused-cells")}>
          <Rows
            caption={t("imports.refused-cells")}
            empty=""
            columns={[
              { head: t("imports.line"), number: true },
              { head: t("imports.column") },
              { head: t("imports.stands") },
              { head: t("imports.why") },
            ]}
            rows={refused.map(({ line, column, value, message }) => ({
              key: `${line} ${column} ${value}`,
              cells: [
                `${line}`,
                column,
                value === "" ? t("imports.empty") : value,
                <span key="w" {...codeMark(message)}>
                  <Sentence message={message} />
                </span>,
              ],
            }))}
          />
          {refusedCount > refused.length && (
            <p>{t("imports.more-refused", { count: refusedCount - refused.length })}</p>
          )}
        </Sheet>
      )}
      {right === 0 ? <p>{t("imports.nothing-right")}</p> : <TakeOver {...view} />}
      <p>
        <a href="/imports">{t("imports.correct")}</a>
      </p>
    </>
  );
}

function TakeOver({ headings, rows, right, held, csrfToken }: PreviewView) {
  const t = useTell();
  return (
    <form method="post" action="/imports/taken" class="sheet">
      <h2>{t("imports.rows")}</h2>
      <Csrf token={csrfToken} />
      <input type="hidden" name="held" value={held} />
      <Rows
        caption={t("imports.rows")}
        empty=""
        columns={[{ head: t("imports.line"), number: true }, ...headings.map((head) => ({ head }))]}
        rows={rows.map(({ line, cells }) => ({ key: `${line}`, cells: [`${line}`, ...cells] }))}
      />
      <button type="submit">{t("imports.take-over", { count: right })}</button>
    </form>
  );
}
