import { Csrf, errorsOf, type FieldProblem, Problems, TextArea } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Sheet } from "../sheet.tsx";

export interface WebhooksView {
  /** one address a line */
  urls: string;
  states: readonly { url: string; waiting: number; why: Sentence | null }[];
  /** public key of the bench by which the receiver checks, SPKI as base64; null on a bench without one */
  publicKey: string | null;
  keyId: string | null;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Who is told of results, amendments, voids and closed lots, and whether it heard. */
export function WebhooksPage({ urls, states, publicKey, keyId, problems, csrfToken }: WebhooksView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <>
      <Problems heading={t("webhooks.not-changed")} problems={problems} />
      <p>{t("webhooks.lead")}</p>
      {states.map(({ url, waiting, why }) => (
        <p key={url}>
          {t("webhooks.state", { url, waiting })}{" "}
          {why !== null && (
            <strong>
              <Sentence message={why} />
            </strong>
          )}
        </p>
      ))}
      <form method="post" action="/settings/webhooks" class="sheet">
        <Csrf token={csrfToken} />
        <TextArea
          name="urls"
          label={t("webhooks.urls")}
          hint={t("webhooks.urls-hint")}
          value={urls}
          {...errorOf("urls")}
        />
        <button type="submit">{t("webhooks.go")}</button>
      </form>
      {publicKey !== null && (
        <Sheet id="signed-by" title={t("webhooks.signed")}>
          <p>{t("webhooks.signed-lead")}</p>
          <Facts
            facts={[
              [t("webhooks.key-id"), <code key="id">{keyId}</code>],
              [t("webhooks.public-key"), <code key="key">{publicKey}</code>],
            ]}
          />
        </Sheet>
      )}
    </>
  );
}
