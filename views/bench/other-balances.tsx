import { useTell } from "../messages/spoken.ts";
import { BenchForm } from "./parts.tsx";
import type { BenchView } from "./view.ts";

/** Changing over to a balance that is heard already; nothing is opened anew. */
export function OtherBalances({ view }: { view: BenchView }) {
  const t = useTell();
  if (view.otherBalances.length === 0) return null;
  return (
    <details class="inline">
      <summary>{t("beside.change-over")}</summary>
      {view.otherBalances.map(({ address, name }) => (
        <BenchForm key={address} view={view} to="/bench/balance" hidden={{ address }}>
          <button type="submit" class="plain">
            {t("beside.take", { balance: name })}
          </button>
        </BenchForm>
      ))}
    </details>
  );
}
