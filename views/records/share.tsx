import { Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

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
  const say = useWords().share;
  const file = (ending: string) =>
    `/records/${encodeURIComponent(id)}/share.${ending}${query && `?${query}`}`;
  return (
    <>
      <p>{say.lead}</p>
      <form method="get" action={`/records/${encodeURIComponent(id)}/share`} class="row">
        <fieldset class="row">
          <legend>{say.tick}</legend>
          {(["ticket", "piece", "day"] as const).map((name) => (
            <label key={name} class="choice">
              <input type="checkbox" name={name} value="1" checked={ticked.has(name)} />
              <span>{say[name]}</span>
            </label>
          ))}
        </fieldset>
        <button type="submit" class="plain">
          {say.show}
        </button>
      </form>
      <p class="row">
        <a class="button" href={file("svg")} download="density-test.svg">
          {say.asPicture}
        </a>
        <button type="button" class="plain" data-png="density-test.png" hidden>
          {say.asPng}
        </button>
        <a class="button" href={file("txt")} download="density-test.txt">
          {say.asText}
        </a>
        <button
          type="button"
          class="plain"
          data-copies="share-text"
          data-fails={say.notCopied}
          data-says={say.copied}
          hidden
        >
          {say.copy}
        </button>
      </p>
      <p class="hint" role="status" data-copy-says />
      <a href={file("svg")}>
        <img class="shared" id="share-picture" src={file("svg")} alt={say.pictureLabel} />
      </a>
      <Sheet id="as-text" title={say.textLabel}>
        <textarea id="share-text" rows={text.split("\n").length + 4} readOnly aria-label={say.textLabel}>
          {text}
        </textarea>
      </Sheet>
    </>
  );
}
