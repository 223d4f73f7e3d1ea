import { localTime } from "../../calibration/local-time.ts";
import { nameMessage } from "../../drivers/balance-name.ts";
import { type Locale, locales } from "../../views/messages/language.ts";
import { type Tell, tell, tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";

/** What a report is written with: the words, the numbers and the sentences of one language. */
export interface Writing {
  locale: Locale;
  t: Tell;
  /** decimal text with the language's mark */
  number(decimal: string): string;
  /** a sentence as an entry of earlier versions holds it */
  tell(written: string): string;
  /** a moment as the clock on the wall shows it, to the minute */
  when(iso: string): string;
  /** how far that clock is from UTC at a moment: "UTC+01:00" */
  zone(iso: string): string;
  /** its day, 2026-03-02 */
  day(iso: string): string;
  /** a balance by its name; its port or address as it stands */
  balance(name: string): string;
  /** the sentences of earlier versions told so far; they stand in English */
  onlyEnglish: string[];
}

/** Writes in a language, on the clock of a place (that of the computer unless it is named). English reports keep the plain decimals they were always issued with. */
export function writingIn(locale: Locale, place = ownZone()): Writing {
  const onlyEnglish: string[] = [];
  return {
    locale,
    t: tellerOf(locale),
    number: (decimal) => (locale === "en" ? decimal : inLocale(decimal, locale)),
    tell(written) {
      if (locale !== "en") onlyEnglish.push(written);
      return written;
    },
    when: (iso) => momentIn(locale, place).format(new Date(iso)),
    zone: (iso) => `UTC${localTime(iso, place).offset.replace("-", "−")}`,
    day: (iso) => localTime(iso, place).day,
    balance(name) {
      if (name === "typed") return tell({ code: "bench.readings.how-taken.typed" }, locale);
      const named = nameMessage(name);
      return typeof named === "string" ? named : tell(named, locale);
    },
    onlyEnglish,
  };
}

const moments = new Map<string, Intl.DateTimeFormat>();

/** Day and time of day in words of the language; English ones with the day first. */
function momentIn(locale: Locale, timeZone: string): Intl.DateTimeFormat {
  const key = `${locale} ${timeZone}`;
  const known = moments.get(key);
  if (known) return known;
  const made = new Intl.DateTimeFormat(locale === "en" ? "en-GB" : locale, {
    ...{ day: "numeric", month: "short", year: "numeric" },
    ...{ hour: "2-digit", minute: "2-digit" },
    timeZone,
  });
  moments.set(key, made);
  return made;
}

const ownZone = () => new Intl.DateTimeFormat().resolvedOptions().timeZone;

/** The language an entry names; reports from before reports had one are in English. */
export function languageOf(named: string | undefined): Locale {
  return locales.find((locale) => locale === named) ?? "en";
}
