import { useTell } from "../messages/spoken.ts";
import { methodViews } from "../methods/index.ts";
import { NextButton } from "./next-button.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, ItemView } from "./view.ts";

/** What the method asks for beside readings of the balance: its form while it is due, and what was stated since. */
export function StatedForm({ view, item, due }: { view: BenchView; item: ItemView; due: boolean }) {
  const t = useTell();
  const { Form, cautions = [] } = methodViews[item.method];
  const { values = {}, lines = [] } = view.stated ?? {};
  const typed = view.problem?.typed;
  const refused = typed?.stated === "yes" ? view.problem : undefined;
  if (!Form || (!due && lines.length === 0)) return null;
  const form = (
    <BenchForm view={view} to="/bench/stated" hidden={{ stated: "yes" }}>
      <Form
        values={refused ? (typed ?? {}) : values}
        refused={refused && { field: refused.field ?? "", message: refused.message }}
      />
      {due ? (
        <NextButton keys="F9">{t("bench.readings.enter")}</NextButton>
      ) : (
        <button type="submit" class="plain">
          {t("bench.readings.enter")}
        </button>
      )}
    </BenchForm>
  );
  if (due)
    return (
      <>
        {form}
        {cautions.length > 0 && (
          <div class="caution">
            {cautions.map((code) => (
              <p key={code}>{t(code)}</p>
            ))}
          </div>
        )}
      </>
    );
  return (
    <>
      <ul class="readings">
        {lines.map(({ label, value }) => (
          <li key={label.code + JSON.stringify(label.params)}>
            {t(label.code, label.params)}: {t(value.code, value.params)}
          </li>
        ))}
      </ul>
      <details class="inline" open={refused !== undefined || undefined}>
        <summary>{t("bench.readings.state-anew")}</summary>
        {form}
      </details>
    </>
  );
}
