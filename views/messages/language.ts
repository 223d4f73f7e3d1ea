import { keysOf } from "../../calibration/keyed.ts";

/** The languages that are shipped, each by its own name; the catalogue of each stands beside this file. */
export const languageNames = { en: "English", de: "Deutsch", es: "Español" } as const;
export type Locale = keyof typeof languageNames;
export const locales = keysOf(languageNames);

/** The shipped language that a browser's Accept-Language header asks for first; English when none fits. */
export function localeFrom(acceptLanguage: string | undefined): Locale {
  for (const part of (acceptLanguage ?? "").split(",")) {
    const tag = part.trim().slice(0, 2).toLowerCase();
    const found = locales.find((locale) => locale === tag);
    if (found) return found;
  }
  return "en";
}
