import { Refusal } from "../../calibration/refusal.ts";
import { type Locale, locales } from "../../views/messages/language.ts";

/** The language that the system is set to, as POSIX names it ("de_AT.UTF-8"); English when it is none of ours. */
function languageOfSystem({ LC_ALL, LC_MESSAGES, LANG }: NodeJS.ProcessEnv): Locale {
  const [asked = ""] = [LC_ALL, LC_MESSAGES, LANG].filter((one) => one);
  const [language] = asked.split(/[_.@]/);
  return locales.find((one) => one === language) ?? "en";
}

/** The language of help and messages: that of `--lang`, else the system's. Throws Refusal for one that is not there. */
export function languageAsked(lang: string | undefined, environment = process.env): Locale {
  if (lang === undefined) return languageOfSystem(environment);
  const found = locales.find((one) => one === lang);
  if (!found) throw new Refusal("cli.language-unknown", { language: lang, right: { anyOf: locales } });
  return found;
}

/** The same of arguments that nobody has looked at yet; the system's where `--lang` cannot be right. */
export function languageIn(args: readonly string[]): Locale {
  const place = args.indexOf("--lang");
  const lang = place < 0 ? args.find((one) => one.startsWith("--lang="))?.slice(7) : args[place + 1];
  return locales.find((one) => one === lang) ?? languageOfSystem(process.env);
}
