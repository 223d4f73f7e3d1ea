import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed } from "../../../views/numbers.ts";
import type { AssayedMelts } from "../../melts/assayed-melts.ts";
import { goldFinenessOfMelt, type PermilleRange } from "../../metals/fineness/fineness.ts";
import { fewestMelts, type MeltSplit, meltSplit } from "../../metals/fineness/melt-split.ts";

/** What the melts of this house foretell of one further melt, in words, with the split once enough are assayed. */
export function meltsSay(
  melts: AssayedMelts,
  confidence: number,
  locale: Locale,
): { says: string; split?: MeltSplit } | undefined {
  const t = tellerOf(locale);
  const { shares, permille, silent } = melts;
  const notCounted = silent > 0 ? [t("assay.own-melts.silent", { count: silent })] : [];
  if (shares.length === 0 || !permille)
    return silent > 0 ? { says: t("assay.own-melts.silent", { count: silent }) } : undefined;
  if (shares.length < fewestMelts)
    return {
      says: [t("assay.own-melts.few", { melts: shares.length, needed: fewestMelts }), ...notCounted].join(
        " ",
      ),
    };
  const split = meltSplit(shares, confidence);
  const percent = (share: number) => `${fixed(100 * share, 0, locale)} %`;
  const whole = (of: number) => fixed(of, 0, locale);
  const { mean, s, next } = split;
  return {
    says: [
      t("assay.own-melts.typical", {
        melts: shares.length,
        mean: percent(mean),
        s: percent(s),
        low: whole(permille.low),
        high: whole(permille.high),
      }),
      ...notCounted,
      t("assay.own-melts.next", {
        confidence: `${fixed(100 * confidence, 2, locale)} %`,
        low: percent(next[0]),
        high: percent(next[1]),
      }),
    ].join(" "),
    split,
  };
}

/** What the melts of this house say of a density of gold alloy. */
export interface MeltsForetell {
  says: readonly string[];
  /** the fineness that a melt with such a rest would have; left out while too few are assayed, or where none has the density */
  permille?: PermilleRange;
}

/** In words, for a density of gold alloy; undefined while no melt of this house was assayed. */
export function meltsForetell(
  melts: AssayedMelts,
  { measured, celsius }: { measured: MeasuredDensity; celsius: number },
  locale: Locale,
): MeltsForetell | undefined {
  const t = tellerOf(locale);
  const told = meltsSay(melts, measured.confidence, locale);
  if (!told?.split) return told && { says: [told.says] };
  const found = goldFinenessOfMelt(measured, told.split.next, celsius);
  const whole = (of: number) => fixed(of, 0, locale);
  const { low, high } = found.corrected;
  return {
    says: [
      told.says,
      found.possible
        ? t("assay.own-melts.narrower", { low: whole(Math.floor(low)), high: whole(Math.ceil(high)) })
        : t("assay.own-melts.impossible"),
      t("assay.own-melts.only"),
    ],
    ...(found.possible ? { permille: found.corrected } : {}),
  };
}
