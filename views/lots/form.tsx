import type { ComponentChildren } from "preact";
import { AboutFields, Csrf } from "../forms.tsx";
import type { LotView } from "./view.ts";

/** A form of the lot; its answer is the whole part that a weighing changes. `to` is the end of its address. */
export function LotForm({
  lot,
  to = "pieces",
  children,
}: {
  lot: Pick<LotView, "id" | "csrfToken" | "about" | "version">;
  to?: string;
  children: ComponentChildren;
}) {
  const action = `/lots/${lot.id}/${to}`;
  return (
    <form method="post" action={action} hx-post={action} hx-target="#lot" hx-swap="outerMorph">
      <Csrf token={lot.csrfToken} />
      <AboutFields about={lot.about} />
      <input type="hidden" name="lotVersion" value={lot.version} />
      {children}
    </form>
  );
}
