import { Csrf, Field, Problems } from "../forms.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import { AssayForm } from "./form.tsx";
import type { AssayPageView } from "./view.ts";

/** The laboratory assays of one recorded piece, and entering one. */
export function AssayPage(view: AssayPageView) {
  const { assay: say, records } = useWords();
  const { record, facts, problems, rows } = view;
  return (
    <>
      <p>
        <a href={record.href}>{records.recordOf(record.ticket)}</a>: {record.density}, {record.mass}.
      </p>
      <Problems heading={say.problems} problems={problems} />
      <Sheet id="laboratory-result" title={say.heading}>
        {facts === undefined ? <p>{say.none}</p> : <Facts facts={facts} />}
        <p class="hint">{say.hint}</p>
      </Sheet>
      <AssayForm {...view} />
      {rows.length > 0 && <EveryAssay {...view} />}
    </>
  );
}

function EveryAssay({ href, rows, csrfToken }: AssayPageView) {
  const say = useWords().assay.list;
  return (
    <Sheet id="every-result" title={say.heading}>
      <ol>
        {rows.map(({ id, says, standing, reason, counts }) => (
          <li key={id}>
            <p>
              {says} <strong>{standing}</strong>
            </p>
            {reason !== "" && <p>{reason}</p>}
            {counts && (
              <details>
                <summary>{say.open}</summary>
                <form method="post" action={`${href}/${id}/voiding`}>
                  <Csrf token={csrfToken} />
                  <Field name="reason" id={`reason-${id}`} label={say.reason} required maxLength={400} />
                  <button type="submit" class="plain">
                    {say.go}
                  </button>
                </form>
              </details>
            )}
          </li>
        ))}
      </ol>
    </Sheet>
  );
}
