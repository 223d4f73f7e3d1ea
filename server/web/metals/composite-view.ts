import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import type { CompositeView } from "../../../views/metals/composite.tsx";
import type { FigureView } from "../../../views/metals/figures.tsx";
import { fixed } from "../../../views/numbers.ts";
import { soundThrough } from "../../conformity/sound-through.ts";
import { called } from "../../metals/called.ts";
import type { NamedComposite } from "../../metals/composites/composite-by-id.ts";
import type { KnownPair } from "../../metals/composites/known-pairs.ts";
import { densityOfMixture } from "../../metals/composites/mixture-part.ts";
import { computedBy, provenanceMessage } from "../../metals/provenance.ts";

const steps = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

/** What a piece put together from two shows, whatever the shares, and its density along them. */
export function compositeView(composite: NamedComposite, locale: Locale): CompositeView {
  const t = tellerOf(locale);
  const name = tellValue(composite.called, locale);
  if (composite.kind === "mixture") {
    const [dense, light] = composite.pair;
    return {
      name,
      figures: mixtureFigures(composite.known, locale),
      message: t("composite.mixture"),
      parts: [dense, light].map((part) => ({
        id: part.id.startsWith("own-") ? part.id : `el-${part.id.toLowerCase()}`,
        name: tellValue(part.called, locale),
      })),
      shareOf: t("composite.share-of-mass", { element: tellValue(dense.called, locale) }),
      densities: steps.map(
        (share) =>
          [`${Math.round(share * 100)} %`, fixed(densityOfMixture(dense, light, share), 2, locale)] as const,
      ),
      shows: [],
    };
  }
  const { core, skin } = composite;
  const sound = soundThrough(core);
  return {
    name,
    figures: [{ figure: "nominal", from: provenanceMessage(computedBy("core-and-skin")) }],
    message: t("composite.skin"),
    parts: [core, skin].map((part) => ({ id: part.id, name: tellValue(called(part), locale) })),
    shareOf: t("composite.share-of-volume"),
    densities: steps.map((share) => {
      const [c, s] = [core.densityGPerCm3.nominal, skin.densityGPerCm3.nominal];
      return [`${Math.round(share * 100)} %`, fixed(c + (s - c) * share, 2, locale)] as const;
    }),
    shows: [
      [t("composite.magnet"), core.magnetism === "none" ? t("composite.not-pulled") : t("composite.pulled")],
      [
        t("composite.colour"),
        t("composite.colours", {
          outside: t(`metal-page.colours.${skin.colour}`) ?? skin.colour,
          inside: t(`metal-page.colours.${core.colour}`) ?? core.colour,
        }),
      ],
      [
        t("composite.speed-of-sound"),
        sound ? t("composite.speed-of-core", { speed: Math.round(sound.mPerS / 10) * 10 }) : undefined,
      ],
    ],
  };
}

/** Where the figures of a mixture come from: density by the law, the rest where the pair is known. */
function mixtureFigures(known: KnownPair | undefined, locale: Locale): FigureView[] {
  const density: FigureView = { figure: "nominal", from: provenanceMessage(computedBy("mixture-law")) };
  if (!known) return [density];
  const { conductivityLow, conductivityHigh, sound } = known.provenance;
  return [
    density,
    ...(conductivityLow
      ? [{ figure: "conductivity-low" as const, from: provenanceMessage(conductivityLow) }]
      : []),
    ...(conductivityHigh
      ? [{ figure: "conductivity-high" as const, from: provenanceMessage(conductivityHigh) }]
      : []),
    ...(sound && known.soundMPerS !== null
      ? [
          {
            figure: "sound" as const,
            value: tellerOf(locale)("metal-page.sound-printed", { speed: known.soundMPerS }),
            from: provenanceMessage(sound),
          },
        ]
      : []),
  ];
}
