import { useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";

interface ShareParts {
  id: string;
  /** what is added to the sheet */
  ticked: ReadonlySet<"ticket" | "piece" | "day">;
  /** the same as part of an address */
  query: string;
  text: string;
}

/** The sheet as it leaves the bench: picture and text, to be looked at before it is taken. */
export function SharePage({ id, ticked, query, text }: ShareParts) {
  const t = useTell();
  const file = (ending: string) =>
    `/records/${encodeURIComponent(id)}/share.${ending}${query && `?${query}`}`;
  return (
    <>
      <p>{t("share.lead")}</p>
      <form method="get" action={`/records/${encodeURIComponent(id)}/share`} class="row">
        <fieldset class="row">
          <legend>{t("share.tick")}</legend>
          {(["ticket", "piece", "day"] as const).map((name) => (
            <label key={name} class="choice">
              <input type="checkbox" name={name} value="1" checked={ticked.has(name)} />
              <span>{t(`share.${name}`)}</span>
            </label>
          ))}
        </fieldset>
        <button type="submit" class="plain">
          {t("share.show")}
        </button>
      </form>
      <p class="row">
        <a class="button" href={file("svg")} download="density-test.svg">
          {t("share.as-picture")}
        </a>
        <button type="button" class="plain" data-png="density-test.png" hidden>
          {t("share.as-png")}
        </button>
        <a class="button" href={file("txt")} download="density-test.txt">
          {t("share.as-text")}
        </a>
        <button
          type="button"
          class="plain"
          data-copies="share-text"
          data-fails={t("share.not-copied")}
          data-says={t("share.copied")}
          hidden
        >
          {t("share.copy")}
        </button>
      </p>
      <p class="hint" role="status" data-copy-says />
      <a href={file("svg")}>
        <img class="shared" id="share-picture" src={file("svg")} alt={t("share.picture-label")} />
      </a>
      <Sheet id="as-text" title={t("share.text-label")}>
        <textarea
          id="share-text"
          rows={text.split("\n").length + 4}
          readOnly
          aria-label={t("share.text-label")}
        >
          {text}
        </textarea>
      </Sheet>
    </>
  );
}
