import type { Code } from "../../calibration/message.ts";
import en from "../../views/messages/en.json" with { type: "json" };

/** True for a code that the catalogues have a text for. */
export const hasText = (code: string): code is Code => Object.hasOwn(en, code);

/** A metal in English, for what is written once and read in any language; messages name it by its id, see called.ts. */
export function englishName({ id, ownName }: { id: string; ownName?: string }): string {
  const code = `metal.${id}`;
  return ownName ?? (hasText(code) ? en[code] : id);
}

/** The code that a data file names. Throws Error with the file where no catalogue has a text for it. */
export function codeIn(code: string, file: string): Code {
  if (hasText(code)) return code;
  throw new Error(
    `server/metals/data/${file}: no text "${code}" in views/messages. Add it in each language.`,
  );
}
