import type { Suspicion } from "../../server/watch/suspicion.ts";

/** What looks wrong about the procedure, each with its question and what to do; it never changes a reading. */
export function Doubts({ doubts }: { doubts: readonly Suspicion[] }) {
  if (doubts.length === 0) return null;
  return (
    <section class="caution" aria-labelledby="doubts-heading">
      <h3 id="doubts-heading">Look at this first</h3>
      {doubts.map(({ kind, says, ask, remedies }) => (
        <div key={kind}>
          <p>
            {says} <strong>{ask}</strong>
          </p>
          <ul>
            {remedies.map((remedy) => (
              <li key={remedy.says}>{remedy.says}</li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
