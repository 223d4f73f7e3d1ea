import type { Frame } from "./frame.ts";
import { tellerOf } from "./messages/tell.ts";

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

/** Head of every page: that this is a demonstration, the places in one line, on a phone in one menu, and the keys. */
export function Masthead({ path, demo, csrfToken, person, locale = "en" }: Frame) {
  const t = tellerOf(locale);
  const here = places.find(({ path: to }) => isAt(path, to));
  return (
    <header>
      {demo && (
        <form class="demo" method="post" action="/settings/demo-clearing">
          <p>
            {t("frame.demo")}
            <span>: {t("frame.demo-what")}</span>
          </p>
          <input type="hidden" name="_csrf" value={csrfToken} />
          <button type="submit" class="quiet">
            {t("frame.demo-end")}
          </button>
        </form>
      )}
      <div class="top">
        <a class="brand" href="/">
          <svg viewBox="0 0 28 28" aria-hidden="true">
            <path d="M2 7H26M7 7V4M21 7V4M14 7V17.5a4 4 0 1 0 4 4" />
          </svg>
          Underhook
        </a>
        <nav class="places" aria-label={t("frame.places")}>
          <Links path={path} locale={locale} person={person} />
        </nav>
        <Keys locale={locale} />
        <details class="pages">
          <summary>{t(here ? `frame.${here.place}` : "frame.pages")}</summary>
          <nav aria-label={t("frame.pages")}>
            <Links path={path} locale={locale} person={person} />
          </nav>
        </details>
      </div>
    </header>
  );
}

function Links({
  path,
  locale,
  person,
}: Required<Pick<Frame, "path" | "locale">> & { person: string | undefined }) {
  const t = tellerOf(locale);
  return (
    <ul>
      {places.map(({ place, path: to }) => (
        <li key={place}>
          <a href={to} {...(isAt(path, to) ? { "aria-current": "page" as const } : {})}>
            {t(`frame.${place}`)}
          </a>
        </li>
      ))}
      {person !== undefined && (
        <li>
          <a href="/sign-in">{person}</a>
        </li>
      )}
    </ul>
  );
}

/** What each key does; single letters act only outside fields and can be switched off in Settings. */
function Keys({ locale }: Required<Pick<Frame, "locale">>) {
  const t = tellerOf(locale);
  const keys = [
    ["Enter", t("frame.key.enter")],
    ["R", t("frame.key.repeat")],
    ["Esc", t("frame.key.call-off")],
    [t("frame.key.space-name"), t("frame.key.space")],
    [t("frame.key.digits-name"), t("frame.key.digits")],
    ["?", t("frame.key.list")],
  ] as const;
  return (
    <details class="keys">
      <summary data-key="?">
        <kbd>?</kbd> <span class="unseen">{t("frame.keys")}</span>
      </summary>
      <dl>
        {keys.map(([key, does]) => (
          <>
            <dt key={key}>
              <kbd>{key}</kbd>
            </dt>
            <dd>{does}</dd>
          </>
        ))}
      </dl>
    </details>
  );
}

function isAt(path: string, to: string): boolean {
  return to === "/" ? path === "/" || path.startsWith("/bench") : path === to || path.startsWith(`${to}/`);
}
