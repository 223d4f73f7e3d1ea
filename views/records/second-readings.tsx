import { SecondReadingRows } from "../bench/second-person.tsx";
import type { SecondReadingView } from "../bench/view.ts";
import { useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";

/** What second persons read of typed readings, agreeing or not. */
export function SecondReadings({ readings }: { readings: readonly SecondReadingView[] }) {
  const t = useTell();
  if (readings.length === 0) return null;
  return (
    <Sheet id="second-person" title={t("second-person.heading")}>
      {readings.map((one) => (
        <div key={one.when}>
          <p>
            {t("second-person.read-by", {
              by: one.by,
              typedBy: one.typedBy,
              when: one.when,
              above: one.above,
            })}
          </p>
          <SecondReadingRows reading={one} />
        </div>
      ))}
    </Sheet>
  );
}
