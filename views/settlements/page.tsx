import { BuyingCaution } from "../cautions.tsx";
import { Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold, Rows, Sheet } from "../sheet.tsx";
import { ClosedSettlements } from "./closed.tsx";
import { DecisionForm } from "./decision-form.tsx";
import { PriceForm } from "./price-form.tsx";
import { PayoutSums, SettlementLines } from "./sheet.tsx";
import { TermsForm } from "./terms-form.tsx";
import { TrustForm } from "./trust-form.tsx";
import type { PreviewView, SettlementSheet, SettlementView } from "./view.ts";

/** The settlement of a lot: from fine mass to money, with both ends and what each sum rests on. */
export function SettlementPage(view: SettlementView) {
  const t = useTell();
  const { sheet, preview, isClosed } = view;
  const counts = isClosed ? view.closed[0]?.sheet : sheet;
  return (
    <>
      <Problems heading={t("payout.problems")} problems={view.problems} />
      {preview && <Difference preview={preview} />}
      <NotKept {...view} />
      <div class="two">
        <div>
          {counts && <PayoutSums sheet={counts} />}
          <p>
            <a href={`/lots/${view.lotId}`}>{t("payout.back", { lot: view.lotName })}</a>
          </p>
          <BuyingCaution />
        </div>
        <div>
          <MeltedIn melts={view.meltedIn} />
          <ClosedSettlements {...view} />
          {sheet && !isClosed && <Worksheet view={view} sheet={sheet} />}
          {!isClosed && <Forms view={view} />}
          <Sayings heading={t("settlement.prices-so-far")} id="prices" said={view.priceVersions} />
          <Sayings heading={t("settlement.said-so-far")} id="said" said={view.said} />
        </div>
      </div>
    </>
  );
}

/** The melts that the lot went into, each with whether it tells what the lot holds. */
function MeltedIn({ melts }: { melts: SettlementView["meltedIn"] }) {
  const t = useTell();
  if (melts.length === 0) return null;
  return (
    <Sheet id="melted-in" title={t("melts.title")}>
      <ul>
        {melts.map(({ href, name, message }) => (
          <li key={href}>
            <a href={href}>{t("melts.of", { melt: name })}</a>: <Sentence message={message} />
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

/** What a change would come to. */
function Difference({ preview }: { preview: PreviewView }) {
  const t = useTell();
  return (
    <Sheet id="difference" title={t("settlement.preview.heading")}>
      <Rows
        caption={t("settlement.preview.caption")}
        empty={t("settlement.preview.nothing")}
        columns={[
          { head: t("payout.what") },
          { head: t("settlement.preview.before"), number: true },
          { head: t("settlement.preview.after"), number: true },
        ]}
        rows={preview.rows.map(({ what, before, after }) => ({ key: what, cells: [what, before, after] }))}
      />
    </Sheet>
  );
}

/** What there is now, line by line, with what each sum rests on. */
function Worksheet({ view: { melts }, sheet }: { view: SettlementView; sheet: SettlementSheet }) {
  const t = useTell();
  return (
    <>
      <SettlementLines sheet={sheet} />
      <p>{t("payout.says")}</p>
      {melts.length > 0 && <h3>{t("assay.own-melts.heading")}</h3>}
      {melts.map((one) => (
        <p key={one}>{one}</p>
      ))}
    </>
  );
}

/** What can be agreed and stated, each in its fold; the one that was sent back stands open, and the price while there is none. */
function Forms({ view }: { view: SettlementView }) {
  const t = useTell();
  const { sheet, sent } = view;
  return (
    <>
      <Fold title={t("payout.heading")} open={sheet === undefined || sent === "payout"}>
        <PriceForm {...view} />
      </Fold>
      <Fold title={t("payout.terms.heading")} open={sent === "terms"}>
        <TermsForm {...view} />
      </Fold>
      {sheet && (
        <Fold title={t("settlement.decision.heading")} open={sent === "decisions"}>
          <DecisionForm {...view} />
        </Fold>
      )}
      {sheet && (
        <Fold title={t("settlement.trust.heading")} open={sent === "trust"}>
          <TrustForm {...view} />
        </Fold>
      )}
    </>
  );
}

/** What was typed into a form that the page no longer has: the lot was closed, or opened again, meanwhile. */
function NotKept({ sent, values, isClosed }: SettlementView) {
  const t = useTell();
  if (sent === undefined || (sent === "reopening") === isClosed) return null;
  const typed = Object.entries(values).filter(
    ([name, value]) => value.trim() !== "" && !["_csrf", "subject", "version", "preview"].includes(name),
  );
  return (
    <Sheet id="not-kept" title={t("settlement.not-kept")}>
      <ul>
        {typed.map(([name, value]) => (
          <li key={name}>
            {name}: {value}
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

function Sayings({ heading, id, said }: { heading: string; id: string; said: readonly string[] }) {
  if (said.length === 0) return null;
  return (
    <Fold id={id} title={heading} note={said.length}>
      <ol reversed>
        {said.map((one, place) => (
          <li key={String(place)}>{one}</li>
        ))}
      </ol>
    </Fold>
  );
}
