import type { FastifyInstance } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { normalBelow } from "../../../calibration/normal.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { FinenessPage, type FinenessView } from "../../../views/plan/fineness.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { type AssayedMelts, assayedMelts } from "../../melts/assayed-melts.ts";
import { goldColours } from "../../metals/fineness/rest-of-alloy.ts";
import { type Entries, readForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { colourOptions, finenessAnswer } from "./fineness-answer.ts";

export const densityRange = { from: 0.5, to: 25, unit: "g/cm³" } as const;
export const uDensityRange = { from: 0.00001, to: 5, unit: "g/cm³" } as const;

/** A density with its standard uncertainty. */
export const densityEntries = ({ number }: Entries) => ({
  density: number({ ...densityRange, what: message("form.field.density") }),
  uDensity: number({ ...uDensityRange, what: message("form.field.standard-uncertainty") }),
});

const densityForm = (entry: Entries) =>
  z.object({
    ...densityEntries(entry),
    metal: entry.choice(["gold", "silver"], { first: "gold" }),
    colour: entry.choice(goldColours, { first: "any" }),
  });

/** Fineness from a typed density, before or without a record. */
export function finenessRoutes(app: FastifyInstance, ledger: Ledger, demo: boolean): void {
  app.get<{ Querystring: Partial<FinenessView["values"]> }>("/plan/fineness", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/plan", demo });
    const { density = "", uDensity = "", metal = "gold", colour = "any" } = request.query;
    const values = { density, uDensity, metal, colour };
    const view = {
      values,
      colours: colourOptions(frame.locale),
      ...answerTo(values, await assayedMelts(ledger), frame.locale),
    };
    const status = view.problems.length > 0 ? 422 : 200;
    return html(
      reply,
      page({
        ...frame,
        title: tellerOf(frame.locale)("plan-pages.fineness-title"),
        main: <FinenessPage {...view} />,
      }),
      status,
    );
  });
}

function answerTo(
  values: FinenessView["values"],
  melts: AssayedMelts,
  locale: Locale,
): Pick<FinenessView, "problems" | "answer"> {
  if (values.density === "" && values.uDensity === "") return { problems: [] };
  const read = readForm(densityForm, values, locale);
  if ("problems" in read) return read;
  const { density: value, uDensity: u, metal, colour } = read.values;
  const measured = {
    valueGPerCm3: value,
    uGPerCm3: u,
    intervalGPerCm3: [value - 2 * u, value + 2 * u] as const,
    confidence: 0.9545,
    intervalFrom: "gum" as const,
    probabilityBelow: (x: number) => normalBelow((x - value) / u),
  };
  const asked = { metal, colour, celsius: 20 } as const;
  return { problems: [], answer: finenessAnswer(measured, asked, { melts, locale }) };
}
