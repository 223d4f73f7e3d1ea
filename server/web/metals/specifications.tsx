import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { type Code, message } from "../../../calibration/message.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Specifications, type SpecificationsView } from "../../../views/specifications/index.tsx";
import { omitUndefined } from "../../compute/omit-undefined.ts";
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
import { type Entries, formIn, postedForm, refuseEntry } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { problemsOf, refusalOf } from "../refused.ts";
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
    const values = asTyped(request);
    const read = postedForm(request, specificationForm);
    if ("problems" in read) return answer(request, reply, { values, problems: read.problems });
    const { own } = await currentSpecifications(ledger, library());
    const next = {
      ...own,
      version: own.version + 1,
      specifications: [...own.specifications, read.values],
    };
    try {
      await keepSpecifications(ledger, library(), next, formIn(request, stepForm).step);
      return reply.redirect("/specifications", 303);
    } catch (error) {
      return answer(request, reply, { values, problems: problemsOf(error, "mass") });
    }
  });
  app.post("/specifications/import", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { file } = formIn(request, importForm);
    const { own } = await currentSpecifications(ledger, library());
    try {
      const next = readOwnSpecifications(takenOver(request, file), library(), own);
      await keepSpecifications(ledger, library(), next);
      return reply.redirect("/specifications", 303);
    } catch (error) {
      const problems = [{ fieldId: "json-file", error: refusalOf(error).message }];
      return answer(request, reply, { values: { file }, problems });
    }
  });
}

const stepForm = ({ ifSent }: Entries) => z.object({ step: ifSent() });
const importForm = ({ exact }: Entries) => z.object({ file: exact() });
const millimetres = { from: 0.05, to: 1000, unit: "mm" } as const;

function specificationForm({ decimal, maybeDecimal, maybeNumber, text, typed }: Entries) {
  const grams = (what: Code) => ({ ...evidenceRanges.massG, what: message(what) });
  const length = (what: Code) => maybeNumber({ ...millimetres, what: message(what) });
  const name = message("specification.refusal.name");
  const source = message("specification.refusal.source");
  return z
    .object({
      name: text({ missing: name }),
      metal: text({ missing: message("specification.refusal.metal") }),
      mass: decimal(grams("form.field.mass")),
      tolerance: maybeNumber({ from: 0.000001, to: 1000, unit: "g", what: message("form.field.tolerance") }),
      fineness: decimal({ from: 1, to: 1000, unit: "‰", what: message("form.field.fineness") }),
      fine: maybeDecimal(grams("form.field.fine-mass")),
      diameter: length("form.field.diameter"),
      thickness: length("form.field.thickness"),
      leastCurrent: maybeNumber(grams("form.field.least-current")),
      source: typed(),
    })
    .transform((of, context): OwnSpecification => {
      const id = idOf(of.name);
      if (id === "own-") refuseEntry(context, "name", name);
      if (of.source.length < 3) refuseEntry(context, "source", source);
      return omitUndefined({
        id,
        name: of.name,
        metal: of.metal,
        mass_g: of.mass,
        mass_tolerance_g: of.tolerance ?? null,
        fineness_permille: of.fineness,
        fineness_tolerance_permille: null,
        fine_mass_g: of.fine,
        least_current_g: of.leastCurrent,
        diameter_mm: of.diameter,
        thickness_mm: of.thickness,
        source: of.source,
      });
    });
}

/** "Harbour medal, 1 oz" is own-harbour-medal-1-oz. */
function idOf(name: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40);
  return `own-${plain}`;
}
