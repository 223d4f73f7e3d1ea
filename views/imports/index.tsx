import { Csrf, Field, Problems, RadioCards, TextArea } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import type { Words } from "../words/index.ts";
import { useWords } from "../words/spoken.ts";

export type ListName = keyof Words["imports"]["lists"];

export interface ImportView {
  /** headings of every list, and whether each must be there */
  headings: Readonly<Record<ListName, readonly { name: string; needed: boolean }[]>>;
  list: ListName;
  text: string;
  from: string;
  problems: readonly { fieldId: string; error: string }[];
  taken: { list: ListName; count: number } | undefined;
  csrfToken: string;
}

/** Choosing a list: a file or pasted lines, and where they come from. */
export function ImportPage(view: ImportView) {
  const say = useWords().imports;
  return (
    <>
      <Problems heading={say.refused} problems={view.problems} />
      {view.taken && (
        <p role="status">
          <strong>{say.taken(view.taken.count, say.lists[view.taken.list])}</strong> {say.stoodAlready}
        </p>
      )}
      <p>{say.lead}</p>
      <form method="post" action="/imports" enctype="multipart/form-data" class="sheet">
        <Csrf token={view.csrfToken} />
        <RadioCards
          name="list"
          legend={say.list}
          value={view.list}
          cards={(Object.keys(say.lists) as ListName[]).map((list) => ({
            value: list,
            label: say.lists[list],
          }))}
        />
        <div class="field">
          <label for="file">{say.file}</label>
          <input type="file" id="file" name="file" accept=".csv,.tsv,.txt,text/csv,text/plain" />
        </div>
        <TextArea name="text" label={say.text} value={view.text} rows={6} />
        <Field name="from" label={say.from} hint={say.fromHint} value={view.from} maxLength={200} required />
        <button type="submit">{say.look}</button>
      </form>
      {(Object.keys(say.lists) as ListName[]).map((list) => (
        <details key={list}>
          <summary>
            {say.columns}: {say.lists[list]}
          </summary>
          <p class="raw">{view.headings[list].map(({ name }) => name).join(",")}</p>
          <ul>
            {view.headings[list].map(({ name, needed }) => (
              <li key={name}>
                {name}: {needed ? say.needed : say.mayBeMissing}
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
  refused: readonly { line: number; column: string; value: string; says: string }[];
  /** how many cells are refused; the first of them are in `refused` */
  refusedCount: number;
  leftOut: readonly string[];
  /** by which the list is held until it is taken over */
  held: string;
  csrfToken: string;
}

/** What would be taken over, with every refused cell by its line and column. */
export function PreviewPage(view: PreviewView) {
  const say = useWords().imports;
  const { right, refused, refusedCount, leftOut } = view;
  return (
    <>
      <p>
        <strong>{say.good(right)}</strong> {refusedCount > 0 && say.bad(refusedCount)}
      </p>
      {leftOut.length > 0 && <p>{say.leftOut(leftOut.join(", "))}</p>}
      {refusedCount > 0 && (
        <Sheet id="refused" title={say.refusedCells}>
          <Rows
            caption={say.refusedCells}
            empty=""
            columns={[
              { head: say.line, number: true },
              { head: say.column },
              { head: say.stands },
              { head: say.why },
            ]}
            rows={refused.map(({ line, column, value, says }) => ({
              key: `${line} ${column} ${value}`,
              cells: [`${line}`, column, value === "" ? say.empty : value, <Told key="w" says={says} />],
            }))}
          />
          {refusedCount > refused.length && <p>{say.moreRefused(refusedCount - refused.length)}</p>}
        </Sheet>
      )}
      {right === 0 ? <p>{say.nothingRight}</p> : <TakeOver {...view} />}
      <p>
        <a href="/imports">{say.correct}</a>
      </p>
    </>
  );
}

function TakeOver({ headings, rows, right, held, csrfToken }: PreviewView) {
  const say = useWords().imports;
  return (
    <form method="post" action="/imports/taken" class="sheet">
      <h2>{say.rows}</h2>
      <Csrf token={csrfToken} />
      <input type="hidden" name="held" value={held} />
      <Rows
        caption={say.rows}
        empty=""
        columns={[{ head: say.line, number: true }, ...headings.map((head) => ({ head }))]}
        rows={rows.map(({ line, cells }) => ({ key: `${line}`, cells: [`${line}`, ...cells] }))}
      />
      <button type="submit">{say.takeOver(right)}</button>
    </form>
  );
}
