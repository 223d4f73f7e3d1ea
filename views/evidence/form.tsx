import type { ComponentChildren } from "preact";
import { type About, AboutFields, Csrf } from "../forms.tsx";

/** Where the forms of evidence are sent, and the part their answer fills; without `fills` the page comes anew. */
export interface EvidenceTarget {
  /** "/records/214/evidence" */
  action: string;
  /** id of the element that the answer fills */
  fills?: string;
  csrfToken: string;
  about: About;
}

/** One form about evidence, with its hidden token. */
export function EvidenceForm({
  target: { action, fills, csrfToken, about },
  path = "",
  children,
}: {
  target: EvidenceTarget;
  /** after the action, such as "/ENTRY/voiding" */
  path?: string;
  children: ComponentChildren;
}) {
  const to = `${action}${path}`;
  const filling =
    fills === undefined ? {} : { "hx-post": to, "hx-target": `#${fills}`, "hx-swap": "innerMorph" as const };
  return (
    <form method="post" action={to} {...filling}>
      <Csrf token={csrfToken} />
      <AboutFields about={about} />
      {children}
    </form>
  );
}
