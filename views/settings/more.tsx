import { Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

/** The way from Settings to what has a page of its own. */
export function MorePages() {
  const say = useWords().settingsPages;
  const pages = [
    { path: "/settings/ledger", name: say.ledger },
    { path: "/customer", name: say.customer },
    { path: "/imports", name: say.imports },
    { path: "/tickets", name: say.tickets },
    { path: "/settings/tokens", name: say.tokens },
    { path: "/settings/retention", name: say.retention },
  ];
  return (
    <Sheet id="more" title={say.heading}>
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
