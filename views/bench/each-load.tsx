import { type Role, roleNames } from "../../server/bench/method.ts";
import type { BenchView, LiveView } from "../../server/bench/view.ts";
import { BenchForm } from "./parts.tsx";

/** The switch for hands in water: each settled load is taken by itself. */
export function EachLoadSwitch({ role, view }: { role: Role; view: BenchView }) {
  const on = view.eachLoad?.role === role;
  const path = on ? "/bench/each-load/end" : "/bench/each-load";
  return (
    <BenchForm view={view} to={path} hidden={{ role }}>
      <button type="submit" class="plain" data-wakes-sound>
        {on ? "Stop taking by itself" : "Hands in water: take each settled load by itself"}
      </button>
      {!on && (
        <p class="hint">A tone and a voice say when it was taken. A foot switch set to F9 does it too.</p>
      )}
    </BenchForm>
  );
}

/** What to do now while each load is taken by itself; renewed with the live reading. */
export function EachLoadNow({ eachLoad }: Pick<LiveView, "eachLoad">) {
  if (!eachLoad) return null;
  const { role, says, taken } = eachLoad;
  return (
    <p class="label" data-taken={taken} data-says={says} data-say={says}>
      <strong>{says}</strong>{" "}
      <span class="hint">
        {taken} {roleNames[role]} {taken === 1 ? "reading" : "readings"} taken by itself
      </span>
    </p>
  );
}
