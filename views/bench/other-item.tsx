import type { ComponentChildren } from "preact";
import { Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { fixed, inLocale } from "../numbers.ts";
import { Photos } from "../photos.tsx";
import { Sentence } from "../sentence.tsx";
import { Facts } from "../sheet.tsx";
import type { OtherItemView } from "./view.ts";

/**
 * The stop before wetting: both masses, the photo if there is one, and two ways on. `form` draws a form of the page it
 * stands on that goes to the given end of its address.
 */
export function OtherItem({
  view,
  typed,
  form,
}: {
  view: OtherItemView;
  /** what was typed and sent back */
  typed: Readonly<Record<string, string>>;
  form: (to: "right-piece" | "other-piece", children: ComponentChildren) => ComponentChildren;
}) {
  const locale = useLocale();
  const t = useTell();
  const grams = (g: number) => fixed(g, view.decimals, locale);
  return (
    <section class="caution" role="alert" aria-labelledby="other-piece">
      <h3 id="other-piece">{t("other-piece.heading")}</h3>
      <p>{t("other-piece.lead")}</p>
      <Facts
        facts={[
          [
            t(`other-piece.announced.${view.from}`),
            <strong key="a">{inLocale(view.announced, locale)}</strong>,
          ],
          [t("other-piece.weighed"), <strong key="w">{inLocale(view.weighed, locale)}</strong>],
          [
            t("other-piece.apart"),
            t("other-piece.apart-by", { apart: grams(view.apartG), within: grams(view.withinG) }),
          ],
        ]}
      />
      {view.ask !== undefined && (
        <p>
          <strong>
            <Sentence message={view.ask} />
          </strong>
        </p>
      )}
      {view.photos.length === 0 ? (
        <p class="hint">{t("other-piece.no-photo")}</p>
      ) : (
        <Photos photos={view.photos} />
      )}
      {form(
        "other-piece",
        <>
          <button type="submit">{t("other-piece.other", { ticket: view.ticket })}</button>
          <p class="hint">{t("other-piece.other-hint")}</p>
        </>,
      )}
      {form(
        "right-piece",
        <fieldset>
          <legend>{t("other-piece.right")}</legend>
          <Field
            name="rightReason"
            label={t("other-piece.why")}
            placeholder={t("other-piece.why-example")}
            value={typed.rightReason ?? ""}
            required
            maxLength={200}
          />
          <Field name="rightBy" label={t("other-piece.by")} value={typed.rightBy ?? ""} maxLength={100} />
          <button type="submit" class="plain">
            {t("other-piece.go-on")}
          </button>
        </fieldset>,
      )}
    </section>
  );
}
