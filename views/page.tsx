import type { ComponentChildren, VNode } from "preact";
import { renderToString } from "preact-render-to-string";
import { AxisLine } from "./axis-line.tsx";
import "./hx.ts";
import type { Locale } from "./messages/language.ts";
import { Speaking } from "./messages/spoken.ts";
import { type Tell, tellerOf } from "./messages/tell.ts";

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
  main: ComponentChildren;
  locale?: Locale;
  /** language of the main part, when it is not (yet) that of the frame; read out rightly by screen readers */
  mainLocale?: Locale;
  /** "auto" follows the device */
  theme?: Theme;
  /** false leaves out the one-key shortcuts (WCAG 2.1.4) */
  keys?: boolean;
  /** what is appended to asset addresses so that a new build is fetched anew */
  assetVersion?: string;
  /** scripts in views/assets that this page alone needs */
  scripts?: readonly string[];
  /** "plain" has neither navigation nor ruler: the window facing a customer, a sheet to print */
  kind?: "full" | "plain";
}

export type Theme = "auto" | "light" | "dark";

type Place = "bench" | "records" | "lots" | "balances" | "checks" | "metals" | "plan" | "settings";

/** The places of the navigation in order, with their paths. */
export const places: readonly { place: Place; path: string }[] = [
  { place: "bench", path: "/" },
  { place: "records", path: "/records" },
  { place: "lots", path: "/lots" },
  { place: "balances", path: "/balances" },
  { place: "checks", path: "/checks" },
  { place: "metals", path: "/metals" },
  { place: "plan", path: "/plan" },
  { place: "settings", path: "/settings" },
];

/** Markup of a part of a page, as a fragment answer or a live message carries it. */
export function render<Props>(part: VNode<Props> | null, locale: Locale = "en"): string {
  return part ? renderToString(<Speaking value={locale}>{part}</Speaking>) : "";
}

/** The whole document. Text and attribute values are escaped; nothing on it needs an inline script or style. */
export function page(frame: Frame): string {
  return `<!doctype html>${renderToString(<Document {...frame} />)}`;
}

/** What the page's own script says of a line that is typed by a balance; it fills {text} and {unit} in by itself. */
export function typedByBalance(t: Tell): Record<string, string> {
  const kept = { text: "{text}", unit: "{unit}" };
  return {
    noWeight: t("typed-by-balance.no-weight", kept),
    noField: t("typed-by-balance.no-field", kept),
    manyFields: t("typed-by-balance.many-fields", kept),
    unknownUnit: t("typed-by-balance.unknown-unit", kept),
  };
}

function Document(frame: Frame) {
  const {
    title,
    locale = "en",
    mainLocale = locale,
    theme = "auto",
    keys = true,
    kind = "full",
    main,
  } = frame;
  const t = tellerOf(locale);
  return (
    <html lang={locale} data-theme={theme} data-keys={keys ? "on" : "off"}>
      <Head
        title={title}
        scripts={frame.scripts ?? []}
        {...(frame.assetVersion === undefined ? {} : { version: frame.assetVersion })}
      />
      <body class={kind} data-typed-by-balance={JSON.stringify(typedByBalance(t))}>
        <a class="skip" href="#main">
          {t("frame.skip")}
        </a>
        {kind === "full" && <Masthead {...frame} />}
        <p class="quiet-notice" data-stale-notice hidden>
          {t("frame.stale")}
        </p>
        <main id="main" tabIndex={-1} {...(mainLocale === locale ? {} : { lang: mainLocale })}>
          <h1>{title}</h1>
          <Speaking value={mainLocale}>{main}</Speaking>
        </main>
        <div id="live" class="unseen" role="status" aria-live="polite" aria-atomic="true" />
        {kind === "full" && (
          <footer>
            <p>{t("frame.footer")}</p>
          </footer>
        )}
      </body>
    </html>
  );
}

function Head({ title, version, scripts }: { title: string; version?: string; scripts: readonly string[] }) {
  const asset = (name: string) => `/assets/${name}${version === undefined ? "" : `?v=${version}`}`;
  return (
    <head>
      <meta charset="utf-8" />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <meta name="color-scheme" content="light dark" />
      <meta name="referrer" content="same-origin" />
      <meta
        name="htmx-config"
        content='{"includeIndicatorCSS":false,"morphIgnore":["data-htmx-powered","open"]}'
      />
      <title>{`${title} · Underhook`}</title>
      <link rel="icon" href={asset("mark.svg")} type="image/svg+xml" />
      <link rel="stylesheet" href={asset("style.css")} />
      {/* Not deferred: a deferred htmx starts on a timer and may look for live parts before hx-sse is there,
          and then the page stays deaf. Like this both wait for the end of the document. */}
      <script src={asset("htmx.min.js")} />
      <script src={asset("hx-sse.min.js")} />
      <script src={asset("bench.js")} defer />
      <script src={asset("hands.js")} defer />
      {scripts.map((name) => (
        <script key={name} src={asset(name)} defer />
      ))}
    </head>
  );
}

function Masthead({ path, demo, csrfToken, locale = "en" }: Frame) {
  const t = tellerOf(locale);
  return (
    <header>
      {demo && (
        <form class="demo" method="post" action="/settings/demo-clearing">
          <p>{t("frame.demo")}</p>
          <input type="hidden" name="_csrf" value={csrfToken} />
          <button type="submit" class="plain">
            {t("frame.demo-end")}
          </button>
        </form>
      )}
      <div class="masthead">
        <a class="name" href="/">
          Underhook
        </a>
        <nav aria-label={t("frame.places")}>
          <ul>
            {places.map(({ place, path: to }) => (
              <li key={place}>
                <a href={to} {...(isAt(path, to) ? { "aria-current": "page" as const } : {})}>
                  {t(`frame.${place}`)}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      <AxisLine unit={t("frame.grams-per-cm3")} />
    </header>
  );
}

function isAt(path: string, to: string): boolean {
  return to === "/" ? path === "/" || path.startsWith("/bench") : path === to || path.startsWith(`${to}/`);
}
