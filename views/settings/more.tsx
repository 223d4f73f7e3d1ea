import { useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";

/** The way from Settings to what has a page of its own. */
export function MorePages() {
  const t = useTell();
  const pages = [
    { path: "/settings/phone", name: t("phone.title") },
    { path: "/settings/sensors", name: t("sensors.title") },
    { path: "/settings/ledger", name: t("settings-pages.ledger") },
    { path: "/customer", name: t("settings-pages.customer") },
    { path: "/imports", name: t("settings-pages.imports") },
    { path: "/tickets", name: t("settings-pages.tickets") },
    { path: "/settings/tokens", name: t("settings-pages.tokens") },
    { path: "/settings/webhooks", name: t("webhooks.title") },
    { path: "/settings/retention", name: t("settings-pages.retention") },
    { path: "/settings/names", name: t("names.title") },
  ];
  return (
    <Sheet id="more" title={t("settings-pages.heading")}>
      <ul>
        {pages.map(({ path, name }) => (
          <li key={path}>
            <a href={path}>{name}</a>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
