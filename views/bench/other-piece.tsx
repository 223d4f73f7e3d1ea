import type { ComponentChildren } from "preact";
import type { OtherPieceView } from "../../server/station/view.ts";
import { Field } from "../forms.tsx";
import { fixed, inLocale } from "../numbers.ts";
import { Photos } from "../photos.tsx";
import { Facts } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";

/**
 * The stop before wetting: both masses, the photo if there is one, and two ways on. `form` draws a form of the page it
 * stands on that goes to the given end of its address.
 */
export function OtherPiece({
  view,
  form,
}: {
  view: OtherPieceView;
  form: (to: "right-piece" | "other-piece", children: ComponentChildren) => ComponentChildren;
}) {
  const locale = useLocale();
  const say = useWords().otherPiece;
  const grams = (g: number) => fixed(g, view.decimals, locale);
  return (
    <section class="caution" role="alert" aria-labelledby="other-piece">
      <h3 id="other-piece">{say.heading}</h3>
      <p>{say.lead}</p>
      <Facts
        facts={[
          [say.announced[view.from], <strong key="a">{inLocale(view.announced, locale)}</strong>],
          [say.weighed, <strong key="w">{inLocale(view.weighed, locale)}</strong>],
          [say.apart, say.apartBy(grams(view.apartG), grams(view.withinG))],
        ]}
      />
      {view.ask !== undefined && (
        <p>
          <strong>
            <Told says={view.ask} />
          </strong>
        </p>
      )}
      {view.photos.length === 0 ? <p class="hint">{say.noPhoto}</p> : <Photos photos={view.photos} />}
      {form(
        "other-piece",
        <>
          <button type="submit">{say.other(view.ticket)}</button>
          <p class="hint">{say.otherHint}</p>
        </>,
      )}
      {form(
        "right-piece",
        <fieldset>
          <legend>{say.right}</legend>
          <Field name="rightReason" label={say.why} placeholder={say.whyExample} required maxLength={200} />
          <Field name="rightBy" label={say.by} maxLength={100} />
          <button type="submit" class="plain">
            {say.goOn}
          </button>
        </fieldset>,
      )}
    </section>
  );
}
