import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { readQuantity } from "../../../calibration/typed-quantity.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import { CompositePage } from "../../../views/metals/composite.tsx";
import { FoundMetals, MetalsIndex, type MetalsPage } from "../../../views/metals/index.tsx";
import { MetalPage } from "../../../views/metals/show.tsx";
import { decimalMark } from "../../../views/numbers.ts";
import { page, render } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import { distanceTo } from "../../conformity/exclusion.ts";
import { called } from "../../metals/called.ts";
import { englishName } from "../../metals/catalogue-code.ts";
import { compositeById } from "../../metals/composites/composite-by-id.ts";
import type { Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import { nearIds } from "../../metals/near-ids.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { frameOf, lookOf } from "../look.ts";
import { html, queryOf, wantsPart } from "../page-request.ts";
import { compositeView } from "./composite-view.ts";
import { familyName, metalRow, metalView } from "./metal-view.ts";

/** "Near a density" means within this share of it. */
const near = 0.015;

/** The library: searched on the density axis, and one page for every metal and every piece made of two. */
export function metalRoutes(
  app: FastifyInstance,
  { library, demo }: { library: CurrentLibrary; demo: boolean },
): void {
  const frame = (request: FastifyRequest, reply: FastifyReply) =>
    frameOf(request, reply, { path: "/metals", demo });

  app.get("/metals", async (request, reply) => {
    const asked = queryOf(request);
    const found = pageOf(library.now, asked, lookOf(request).locale);
    const around = frame(request, reply);
    if (wantsPart(request)) return html(reply, render(<FoundMetals {...found} />, around.locale));
    const title = tellerOf(around.locale)("metals.title");
    return html(reply, page({ ...around, title, main: <MetalsIndex {...found} /> }));
  });

  app.get<{ Params: { id: string } }>("/metals/:id", async (request, reply) => {
    const { id } = request.params;
    const around = frame(request, reply);
    const { now } = library;
    if (now.has(id)) {
      const view = metalView(now.metal(id), now, around.locale);
      return html(reply, page({ ...around, title: view.name, main: <MetalPage {...view} /> }));
    }
    const composite = compositeById(id, now);
    if (composite) {
      const view = compositeView(composite, around.locale);
      return html(reply, page({ ...around, title: view.name, main: <CompositePage {...view} /> }));
    }
    const ids = now.metals.map((m) => m.id);
    const near = nearIds(id, ids, 4).map((other) => called(now.metal(other)));
    const sentence = message("metal.refusal.unknown", { id, library: now.version, near });
    return html(
      reply,
      page({
        ...around,
        title: tellerOf(around.locale)("metals.none"),
        main: <Problem message={sentence} />,
      }),
      404,
    );
  });
}

function pageOf(
  library: Library,
  { q = "", family = "", density = "" }: Record<string, string | undefined>,
  locale: Locale,
): MetalsPage {
  const wanted =
    density.trim() === "" ? undefined : readQuantity(density, { unit: "g/cm³", mark: decimalMark(locale) });
  const gPerCm3 = wanted?.kind === "number" ? Number(wanted.text) : undefined;
  const words = q.toLowerCase().split(/\s+/).filter(Boolean);
  const families = [...new Set(library.metals.map((m) => m.family))];
  const found = library.metals.filter(
    (m) =>
      (family === "" || m.family === family) &&
      words.every((word) => textOf(m, locale).includes(word)) &&
      (gPerCm3 === undefined || distanceTo(m.densityGPerCm3, gPerCm3) <= near * gPerCm3),
  );
  const away = (m: Metal) => (gPerCm3 === undefined ? 0 : distanceTo(m.densityGPerCm3, gPerCm3));
  return {
    q,
    family,
    density,
    families: families.map((id) => ({ id, name: familyName(id, locale) })),
    rows: found
      .sort((a, b) => away(a) - away(b) || a.densityGPerCm3.nominal - b.densityGPerCm3.nominal)
      .map((metal) => metalRow(metal, locale)),
    all: library.metals.length,
    libraryVersion: library.version,
    ...(wanted !== undefined && wanted.kind !== "number" ? { densityProblem: wanted.message } : {}),
  };
}

/** Where a word of the search may stand: name and family in English and in the page's language, id, elements. */
function textOf(metal: Metal, locale: Locale): string {
  const { id, family, composition } = metal;
  return `${englishName(metal)} ${tellValue(called(metal), locale)} ${id} ${familyName(family)} ${familyName(family, locale)} ${Object.keys(composition).join(" ")}`.toLowerCase();
}
