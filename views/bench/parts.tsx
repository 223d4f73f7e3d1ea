import type { ComponentChildren } from "preact";
import { type About, AboutFields, Csrf } from "../forms.tsx";
import { codeMark, Sentence } from "../sentence.tsx";
import type { Problem } from "./view.ts";

/** A refusal, in the words it was given. */
export function ProblemNote({ problem }: { problem: Problem | undefined }) {
  if (problem === undefined) return null;
  return (
    <div class="problems" role="alert">
      <p {...codeMark(problem.message)}>
        <Sentence message={problem.message} />
      </p>
    </div>
  );
}

/** What was typed into the form of this address and sent back; empty where nothing was. */
export function typedInto(problem: Problem | undefined, to: string): Readonly<Record<string, string>> {
  return problem?.from === to ? (problem.typed ?? {}) : {};
}

/**
 * A form of the bench. With scripts its answer fills the piece's part of the page; without, the page comes anew.
 * `hidden` are the fields nobody sees.
 */
export function BenchForm({
  view,
  to,
  hidden = {},
  children,
}: {
  view: { csrfToken: string; about: About };
  to: string;
  hidden?: Record<string, string>;
  children: ComponentChildren;
}) {
  return (
    <form method="post" action={to} hx-post={to} hx-target="#piece" hx-swap="innerMorph">
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
    </form>
  );
}
