import { useTell } from "./messages/spoken.ts";
import { Caution } from "./sheet.tsx";

/** Shown before the first immersion: pieces that water harms. */
export function WettingCaution() {
  const t = useTell();
  return (
    <Caution title={t("cautions.wetting")}>
      <p>{t("cautions.wetting-lead")}</p>
      <ul>
        {([1, 2, 3, 4, 5] as const).map((place) => (
          <li key={place}>{t(`cautions.not-to-be-wetted.${place}`)}</li>
        ))}
      </ul>
    </Caution>
  );
}

/** Shown beside other evidence: acids and magnets. */
export function TestingCaution() {
  const t = useTell();
  return (
    <Caution title={t("cautions.testing")}>
      <p>{t("cautions.acid")}</p>
      <p>{t("cautions.magnet")}</p>
    </Caution>
  );
}

/** Shown where weights become money. */
export function BuyingCaution() {
  const t = useTell();
  return (
    <Caution title={t("cautions.buying")}>
      <p>{t("cautions.buying-what")}</p>
    </Caution>
  );
}
