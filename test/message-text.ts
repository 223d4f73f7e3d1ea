import type { Code, Params } from "../calibration/message.ts";
import type { Locale } from "../views/messages/language.ts";
import { tell } from "../views/messages/tell.ts";

/** What a page says for a code with its values: a test names the code and the values, never the words. */
export function messageText(code: Code, params: Params = {}, locale: Locale = "en"): string {
  return tell({ code, params }, locale);
}
