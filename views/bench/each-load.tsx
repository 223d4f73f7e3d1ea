import { useLocale, useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { toldText } from "../told.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, LiveView } from "./view.ts";

/** The switch for hands in water: each settled load is taken by itself. */
export function EachLoadSwitch({ role, view }: { role: Role; view: BenchView }) {
  const t = useTell();
  const on = view.eachLoad?.role === role;
  const path = on ? "/bench/each-load/end" : "/bench/each-load";
  return (
    <BenchForm view={view} to={path} hidden={{ role }}>
      <button
        type="submit"
        class="plain"
        data-wakes-sound
        data-key="Space"
        aria-pressed={on ? "true" : "false"}
      >
        {t(on ? "bench.next.end-hands-free" : "bench.next.hands-free")} <kbd>{t("frame.key.space-name")}</kbd>
      </button>
    </BenchForm>
  );
}

/** What to do now while each load is taken by itself; renewed with the live reading. */
export function EachLoadNow({ eachLoad }: Pick<LiveView, "eachLoad">) {
  const locale = useLocale();
  const t = useTell();
  if (!eachLoad) return null;
  const { role, taken } = eachLoad;
  const says = toldText(eachLoad.says, locale);
  return (
    <p class="hands-free wide-part" data-taken={taken} data-says={says} data-say={says}>
      <strong>{says}</strong>{" "}
      <span class="hint">{t("bench.each-load.taken", { count: taken, role: t(`bench.roles.${role}`) })}</span>
    </p>
  );
}
