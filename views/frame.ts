import type { ComponentChildren } from "preact";
import type { Locale } from "./messages/language.ts";

/** What the frame around every page is told. */
export interface Frame {
  /** heading of the page, also the browser's title */
  title: string;
  /** path of the page, such as "/records"; marks the place in the navigation */
  path: string;
  /** token of the form on the frame (clearing the demonstration) */
  csrfToken: string;
  /** true while the bench shows invented pieces */
  demo: boolean;
  /** what stands beside the heading, small */
  note?: ComponentChildren;
  /** what may be done with all of the page: links at the end of the heading's line */
  actions?: ComponentChildren;
  /** true where the main part draws its own heading */
  ownHeading?: boolean;
  main: ComponentChildren;
  locale?: Locale;
  /** language of the main part, when it is not (yet) that of the frame; read out rightly by screen readers */
  mainLocale?: Locale;
  /** initials of whoever is signed in on another device; nobody signs in at the machine itself */
  person?: string;
  /** "auto" follows the device */
  theme?: Theme;
  /** false leaves out the one-key shortcuts (WCAG 2.1.4) */
  keys?: boolean;
  /** what is appended to asset addresses so that a new build is fetched anew */
  assetVersion?: string;
  /** scripts in views/assets that this page alone needs */
  scripts?: readonly string[];
  /** "plain" has no navigation: the window facing a customer, a sheet to print */
  kind?: "full" | "plain";
}

export type Theme = "auto" | "light" | "dark";
