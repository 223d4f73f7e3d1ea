import type { VNode } from "preact";
import { renderToString } from "preact-render-to-string";
import type { Frame } from "./frame.ts";
import "./hx.ts";
import { Masthead } from "./masthead.tsx";
import type { Locale } from "./messages/language.ts";
import { Speaking } from "./messages/spoken.ts";
import { type Tell, tellerOf } from "./messages/tell.ts";
import { TitleLine } from "./title-line.tsx";

export type { Frame, Theme } from "./frame.ts";

/** Scripts of every page: those that are there before its end, and those that come with it. */
export const scriptsFirst = ["htmx.min.js", "hx-sse.min.js"] as const;
export const scriptsOfAll = ["bench.js", "hands.js", "plots.js", "offline.js"] as const;

/** Style sheets in views/assets, in the order they build on each other. */
export const styles = [
  "tokens.css",
  "parts.css",
  "forms.css",
  "bench.css",
  "plots.css",
  "print.css",
] as const;

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
        <p class="quiet-notice" data-kept-notice hidden>
          <a href="/offline">{t("offline.notice")}</a>
        </p>
        <main id="main" tabIndex={-1} {...(mainLocale === locale ? {} : { lang: mainLocale })}>
          <Speaking value={mainLocale}>
            {!frame.ownHeading && (
              <TitleLine title={title} note={frame.note}>
                {frame.actions}
              </TitleLine>
            )}
            {main}
          </Speaking>
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
      <meta
        name="viewport"
        content="width=device-width, initial-scale=1, interactive-widget=resizes-content"
      />
      <meta name="color-scheme" content="light dark" />
      <meta name="referrer" content="same-origin" />
      <meta
        name="htmx-config"
        content='{"includeIndicatorCSS":false,"morphIgnore":["data-htmx-powered","open"]}'
      />
      <title>{`${title} · Underhook`}</title>
      <link rel="icon" href={asset("mark.svg")} type="image/svg+xml" />
      <link rel="manifest" href="/manifest.webmanifest" />
      {styles.map((name) => (
        <link key={name} rel="stylesheet" href={asset(name)} />
      ))}
      {/* Not deferred: a deferred htmx starts on a timer and may look for live parts before hx-sse is there,
          and then the page stays deaf. Like this both wait for the end of the document. */}
      {scriptsFirst.map((name) => (
        <script key={name} src={asset(name)} />
      ))}
      {[...scriptsOfAll, ...scripts].map((name) => (
        <script key={name} src={asset(name)} defer />
      ))}
    </head>
  );
}
