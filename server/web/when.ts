import { localTime, momentText } from "../../calibration/local-time.ts";
import type { Locale } from "../../views/messages/language.ts";

/** How a page tells something: in its language, on the clock of the place. */
export interface Manner {
  locale: Locale;
  /** time zone of the place, of the IANA list */
  zone: string;
}

/** A moment as every page writes it. */
export const whenOf = momentText;

/** The day of a moment on the clock of the place. */
export const dayOf = (at: string, zone: string): string => localTime(at, zone).day;
