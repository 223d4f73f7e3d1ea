import type { Problem } from "../../server/bench/view.ts";

/** The token that tells the bench a form came from its own page. */
export function Csrf({ token }: { token: string }) {
  return <input type="hidden" name="_csrf" value={token} />;
}

/** A refusal, in the words it was given. */
export function ProblemNote({ problem }: { problem: Problem | undefined }) {
  if (problem === undefined) return null;
  return (
    <div class="problems" role="alert">
      <p>{problem.says}</p>
    </div>
  );
}
