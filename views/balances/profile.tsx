import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { SampleLines, type SampleView } from "./samples.tsx";

export interface ProfileView {
  name: string;
  version: number;
  keptAt: string;
  exportHref: string;
  facts: readonly Sentence[];
  open: readonly Sentence[];
  samples: readonly SampleView[];
  /** the sample lines read by the profile now: all well, or what went wrong */
  test: Sentence;
  inUse: boolean;
  canBeUsed: boolean;
  csrfToken: string;
}

/** One learned profile: what it says, its own test, and what can be done with it. */
export function ProfilePage(view: ProfileView) {
  const t = useTell();
  return (
    <Sheet id="profile" title={view.name}>
      <Facts
        facts={[
          [t("balances.version"), String(view.version)],
          [t("balances.kept"), view.keptAt],
          [t("balances.own-test"), <Sentence key="t" message={view.test} />],
          [t("balances.in-use"), view.inUse ? t("plan.yes") : t("plan.no")],
        ]}
      />
      <ul>
        {view.facts.map((one, index) => (
          <li key={index}>
            <Sentence message={one} />
          </li>
        ))}
      </ul>
      {view.open.length > 0 && (
        <>
          <h3>{t("balances.not-sure")}</h3>
          <ul>
            {view.open.map((one, index) => (
              <li key={index}>
                <Sentence message={one} />
              </li>
            ))}
          </ul>
        </>
      )}
      <SampleLines lines={view.samples} />
      <div class="row">
        <a class="button" href={view.exportHref}>
          {t("balances.save-as-file")}
        </a>
        {view.canBeUsed && (
          <form method="post" action="/balances/profiles/use">
            <Csrf token={view.csrfToken} />
            <input type="hidden" name="name" value={view.inUse ? "" : view.name} />
            <button type="submit" class="plain">
              {view.inUse ? t("balances.go-back-to-shapes") : t("balances.read-by-it")}
            </button>
          </form>
        )}
      </div>
    </Sheet>
  );
}
