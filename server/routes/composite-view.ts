import type { CompositeView } from "../../views/metals/composite.tsx";
import { fixed } from "../../views/numbers.ts";
import type { Locale } from "../../views/words/index.ts";
import { mixtureDensity } from "../alloys/mixture.ts";
import type { NamedComposite } from "../composites/composite-by-id.ts";
import { soundThrough } from "../findings/separation.ts";

const steps = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

/** What a piece put together from two shows, whatever the shares, and its density along them. */
export function compositeView(composite: NamedComposite, locale: Locale): CompositeView {
  const { name, source } = composite;
  if (composite.kind === "mixture") {
    const [dense, light] = composite.pair;
    return {
      name,
      source,
      says: "Its maker is free to choose the shares, so it can be given any density between those of the two. No density excludes it inside that range; another test does.",
      parts: [dense, light].map((symbol) => ({ id: `el-${symbol.toLowerCase()}`, name: symbol })),
      shareOf: `${dense}, share of the mass`,
      densities: steps.map((share) => {
        const { correctedGPerCm3 } = mixtureDensity({ [dense]: share, [light]: 1 - share });
        return [`${Math.round(share * 100)} %`, fixed(correctedGPerCm3, 2, locale)] as const;
      }),
      shows: [],
    };
  }
  const { core, skin } = composite;
  const sound = soundThrough(core);
  return {
    name,
    source,
    says: "Its maker is free to choose the thickness of the skin, so it can be given any density between those of the two. No density excludes it inside that range. What looks only at the skin (colour, touchstone, acid, X-rays) sees the skin.",
    parts: [core, skin].map(({ id, name: partName }) => ({ id, name: partName })),
    shareOf: "Skin, share of the volume",
    densities: steps.map((share) => {
      const [c, s] = [core.densityGPerCm3.nominal, skin.densityGPerCm3.nominal];
      return [`${Math.round(share * 100)} %`, fixed(c + (s - c) * share, 2, locale)] as const;
    }),
    shows: [
      ["Magnet", core.magnetism === "none" ? "the core is not pulled" : "the core is pulled"],
      ["Colour", `${skin.colour} outside, ${core.colour} where the skin is cut through`],
      [
        "Speed of sound",
        sound ? `that of the core, about ${Math.round(sound.mPerS / 10) * 10} m/s` : undefined,
      ],
    ],
  };
}
