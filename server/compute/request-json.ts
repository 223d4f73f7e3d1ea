import { reasonOf } from "../../calibration/reason.ts";
import { Refusal } from "../../calibration/refusal.ts";

/** Brackets in one another; the deepest request of the contract has seven. */
const deepest = 32;

/** The request in a JSON text. Throws Refusal for a text that is none, or whose brackets stand deeper than 32. */
export function requestIn(text: string): unknown {
  if (isDeeper(text, deepest)) throw new Refusal("compute.too-deep", { most: deepest });
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Refusal("compute.not-json", { why: reasonOf(error) });
  }
}

/** Whether brackets outside of strings ever stand deeper; looked at before anything walks into them. */
function isDeeper(text: string, most: number): boolean {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const one = text[i];
    if (quoted) {
      if (one === "\\") i++;
      else if (one === '"') quoted = false;
    } else if (one === '"') quoted = true;
    else if (one === "{" || one === "[") {
      if (++depth > most) return true;
    } else if (one === "}" || one === "]") depth--;
  }
  return false;
}
