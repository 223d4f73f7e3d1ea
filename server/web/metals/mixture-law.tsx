import type { FastifyInstance } from "fastify";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { MixtureLaw, type MixtureLawPage } from "../../../views/metals/mixture-law.tsx";
import { fixed } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { excessTerms } from "../../metals/excess-terms.ts";
import { mixtureDensity } from "../../metals/mixture.ts";
import { provenanceMessage } from "../../metals/provenance.ts";
import { publishedPairs } from "../../metals/published-pairs.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";

/** The mixture law against published densities. */
export function mixtureLawRoutes(app: FastifyInstance, demo: boolean): void {
  app.get("/mixture-law", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/metals", demo });
    const title = tellerOf(frame.locale)("mixture-law.title");
    return html(reply, page({ ...frame, title, main: <MixtureLaw {...viewOf(frame.locale)} /> }));
  });
}

function viewOf(locale: Locale): MixtureLawPage {
  const residuals = publishedPairs.map(({ fractions, gPerCm3, source, printedWithin }) => {
    const { correctedGPerCm3, uGPerCm3 } = mixtureDensity(fractions);
    return {
      alloy: alloyOf(fractions),
      gPerCm3,
      lawGPerCm3: correctedGPerCm3,
      offPercent: 100 * (gPerCm3 / correctedGPerCm3 - 1),
      withinPercent: 100 * ((2 * uGPerCm3) / correctedGPerCm3 + printedWithin),
      source,
    };
  });
  const squares = residuals.reduce((sum, { offPercent }) => sum + offPercent ** 2, 0);
  return {
    residuals,
    rmsPercent: Math.sqrt(squares / residuals.length),
    terms: excessTerms.map(({ pair, bCm3PerG, uCm3PerG, provenance, points }) => ({
      pair: pair.join("-"),
      b: fixed(bCm3PerG, 5, locale),
      u: fixed(uCm3PerG, 5, locale),
      from: provenanceMessage(provenance),
      points: points.length,
    })),
  };
}

/** "Au 75 Cu 25", per cent of the mass. */
const alloyOf = (fractions: Readonly<Record<string, number>>) =>
  Object.entries(fractions)
    .map(([of, share]) => `${of} ${+(100 * share).toPrecision(3)}`)
    .join(" ");
