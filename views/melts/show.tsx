import { BuyingCaution } from "../cautions.tsx";
import { Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import {
  AssayEntry,
  BarForm,
  DrillingForm,
  ExclusionForm,
  ReopeningForm,
  SettlingForm,
  ToleranceForm,
} from "./forms.tsx";
import type { MeltView } from "./view.ts";

/** One melt: what went in, what came out, what laboratories found in it, and its final figures. */
export function MeltPage(view: MeltView) {
  const t = useTell();
  const { facts, agreements, assays, settlings, isSettled, hasDrillings, problems } = view;
  return (
    <>
      <Problems heading={t("payout.problems")} problems={problems} />
      <div class="two">
        <div>
          <Sheet id="melt" title={t("melts.masses")}>
            <Facts facts={facts} />
          </Sheet>
          <p>
            <a href="/melts">{t("melts.all")}</a>
          </p>
          <BuyingCaution />
        </div>
        <div>
          <Rows
            caption={t("melts.agreement")}
            empty={t("melts.no-assays")}
            columns={[{ head: t("payout.metal") }, { head: t("melts.found") }, { head: t("melts.follows") }]}
            rows={agreements.map(({ metal, sides, follows }) => ({
              key: metal,
              cells: [metal, sides, <Sentence key="s" message={follows} />],
            }))}
          />
          {settlings.length > 0 && (
            <Sheet id="settled" title={t("melts.final")}>
              <ol reversed>
                {settlings.map((one) => (
                  <li key={one}>{one}</li>
                ))}
              </ol>
            </Sheet>
          )}
          {assays.length > 0 && (
            <Sheet id="assays" title={t("melts.assays")}>
              <ol>
                {assays.map(({ id, message, counts }) => (
                  <li key={id}>
                    <p>{message}</p>
                    {counts && !isSettled && <ExclusionForm view={view} id={id} />}
                  </li>
                ))}
              </ol>
            </Sheet>
          )}
          {isSettled ? (
            <ReopeningForm {...view} />
          ) : (
            <>
              <BarForm {...view} />
              <DrillingForm {...view} />
              <ToleranceForm {...view} />
              {hasDrillings && <AssayEntry {...view} />}
              <SettlingForm {...view} />
            </>
          )}
        </div>
      </div>
    </>
  );
}
