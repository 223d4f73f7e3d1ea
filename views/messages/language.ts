/** The languages that are shipped. */
export const locales = ["en", "de", "es"] as const;
export type Locale = (typeof locales)[number];

/** Each language by its own name. */
export const languageNames: Record<Locale, string> = { en: "English", de: "Deutsch", es: "Español" };

/** The shipped language that a browser's Accept-Language header asks for first; English when none fits. */
export function localeFrom(acceptLanguage: string | undefined): Locale {
  for (const part of (acceptLanguage ?? "").split(",")) {
    const tag = part.trim().slice(0, 2).toLowerCase();
    const found = locales.find((locale) => locale === tag);
    if (found) return found;
  }
  return "en";
}
