import type { Code, Params } from "../calibration/message.ts";
import type { Locale } from "../views/messages/language.ts";
import { tell } from "../views/messages/tell.ts";

/** A message as it stands in the markup of a page. */
export function shown(code: Code, params: Params = {}, locale: Locale = "en"): string {
  return tell({ code, params }, locale)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll('"', "&quot;");
}
