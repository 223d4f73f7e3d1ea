import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Specifications, type SpecificationsView } from "../../../views/specifications/index.tsx";
import { evidenceRanges } from "../../conformity/evidence/recorded.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { calledById } from "../../metals/composites/composite-by-id.ts";
import type { Library } from "../../metals/library.ts";
import {
  type OwnSpecifications,
  readOwnSpecifications,
  writeOwnSpecifications,
} from "../../metals/specifications/own-specifications.ts";
import { currentSpecifications, keepSpecifications } from "../../station/current-specifications.ts";
import { NumberEntries } from "../evidence/evidence-form.ts";
import { frameOf, lookOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { takenOver } from "../uploads.ts";
import { claimOptions } from "./claim-options.ts";

interface Parts {
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
}

type Refused = Pick<SpecificationsView, "values" | "problems">;
type OwnSpecification = OwnSpecifications["specifications"][number];

/** Specifications to hold a piece against: the starter set from laws, and the owner's own with their cross-check. */
export function specificationRoutes(app: FastifyInstance, { ledger, demo, library }: Parts): void {
  async function answer(request: FastifyRequest, reply: FastifyReply, refused?: Refused) {
    const frame = frameOf(request, reply, { path: "/metals", demo });
    const { all, own } = await currentSpecifications(ledger, library());
    const view: SpecificationsView = {
      rows: all.map((one) => ({
        id: one.id,
        name: tellValue(one.called, frame.locale),
        metal: tellValue(calledById(one.metal, library()), frame.locale),
        mass: `${one.massG}`,
        tolerance:
          one.massToleranceG === null
            ? tellerOf(frame.locale)("specification.not-stated")
            : `${Number(one.massToleranceG.toPrecision(4))}`,
        fineness: `${one.finenessPermille}`,
        size: [one.diameterMm, one.thicknessMm].filter((mm) => mm !== undefined).join(" × "),
        source: one.source,
      })),
      claims: claimOptions(library(), frame.locale),
      values: {},
      problems: [],
      ...refused,
      csrfToken: frame.csrfToken,
      stepKey: `specifications-${own.version}-${own.specifications.length}`,
    };
    return html(
      reply,
      page({
        ...frame,
        title: tellerOf(frame.locale)("specifications.title"),
        main: <Specifications {...view} />,
      }),
      refused ? 422 : 200,
    );
  }

  app.get("/specifications", (request, reply) => answer(request, reply));
  app.get("/specifications.json", async (_request, reply) =>
    reply
      .type("application/json; charset=utf-8")
      .header("content-disposition", 'attachment; filename="own-specifications.json"')
      .send(writeOwnSpecifications((await currentSpecifications(ledger, library())).own)),
  );
  app.post("/specifications", { preHandler: app.csrfProtection }, async (request, reply) => {
    const values = fieldsOf(request);
    const typed = typedSpecification(values, new NumberEntries(values, lookOf(request).locale));
    if ("problems" in typed) return answer(request, reply, { values, problems: typed.problems });
    const { own } = await currentSpecifications(ledger, library());
    const next = {
      ...own,
      version: own.version + 1,
      specifications: [...own.specifications, typed],
    };
    try {
      await keepSpecifications(ledger, library(), next, values.step);
      return reply.redirect("/specifications", 303);
    } catch (error) {
      const { says, field = "mass" } = refusalOf(error);
      return answer(request, reply, { values, problems: [{ fieldId: field, error: says }] });
    }
  });
  app.post("/specifications/import", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { file = "" } = fieldsOf(request);
    const { own } = await currentSpecifications(ledger, library());
    try {
      const next = readOwnSpecifications(takenOver(request, file), library(), own);
      await keepSpecifications(ledger, library(), next);
      return reply.redirect("/specifications", 303);
    } catch (error) {
      const problems = [{ fieldId: "json-file", error: refusalOf(error).says }];
      return answer(request, reply, { values: { file }, problems });
    }
  });
}

const millimetres = { from: 0.05, to: 1000, unit: "mm" } as const;

function typedSpecification(values: Record<string, string>, numbers: NumberEntries) {
  const { name = "", metal = "", source = "" } = values;
  const mass = numbers.text("mass", "form.field.mass", evidenceRanges.massG);
  const fineness = numbers.text("fineness", "form.field.fineness", { from: 1, to: 1000, unit: "‰" });
  const tolerance = numbers.optional("tolerance", "form.field.tolerance", {
    from: 0.000001,
    to: 1000,
    unit: "g",
  });
  const fine =
    (values.fine ?? "").trim() === ""
      ? ""
      : numbers.text("fine", "form.field.fine-mass", evidenceRanges.massG);
  const diameter = numbers.optional("diameter", "form.field.diameter", millimetres);
  const least = numbers.optional("leastCurrent", "form.field.least-current", evidenceRanges.massG);
  const thickness = numbers.optional("thickness", "form.field.thickness", millimetres);
  const id = `own-${name
    .trim()
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40)}`;
  if (!/^own-[a-z0-9]/.test(id)) numbers.refuse("name", message("specification.refusal.name"));
  if (source.trim().length < 3) numbers.refuse("source", message("specification.refusal.source"));
  if (metal === "") numbers.refuse("metal", message("specification.refusal.metal"));
  if (numbers.problems.length > 0) return { problems: numbers.problems };
  const one: OwnSpecification = {
    id,
    name: name.trim(),
    metal,
    mass_g: mass,
    mass_tolerance_g: tolerance ?? null,
    fineness_permille: fineness,
    fineness_tolerance_permille: null,
    ...(fine === "" ? {} : { fine_mass_g: fine }),
    ...(least === undefined ? {} : { least_current_g: least }),
    ...(diameter === undefined ? {} : { diameter_mm: diameter }),
    ...(thickness === undefined ? {} : { thickness_mm: thickness }),
    source: source.trim(),
  };
  return one;
}
