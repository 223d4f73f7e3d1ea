import type { FastifyInstance } from "fastify";
import { z } from "zod";
import { keyed } from "../../../calibration/keyed.ts";
import { type Code, message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import { fixed, fromTo } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import {
  DensityMatchesPage,
  type DensityMatchesView,
  type DensityMatchRow,
  lengthsOf,
  type OutlineKind,
  outlines,
} from "../../../views/plan/density-matches.tsx";
import { called } from "../../metals/called.ts";
import { type Candidate, candidates } from "../../metals/composites/candidates.ts";
import { type Shape, volumeOf } from "../../metals/composites/shape.ts";
import type { Library } from "../../metals/library.ts";
import { type Entries, readForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { claimOptions } from "./claim-options.ts";
import { densityEntries } from "./fineness.tsx";

type Values = DensityMatchesView["values"];
type Answered = Pick<DensityMatchesView, "problems" | "answer">;

const names: readonly (keyof Values)[] = [
  "density",
  "uDensity",
  "claim",
  "outline",
  ...outlines.flatMap((kind) => lengthsOf[kind]),
];
const millimetres = { from: 0.05, to: 1000, unit: "mm" } as const;
/** So many of each kind are listed. */
const listed = 15;

/** What can have a density; asked by its address, or from a record with its numbers. */
export function densityMatchRoutes(app: FastifyInstance, library: () => Library, demo: boolean): void {
  app.get<{ Querystring: Record<string, string | undefined> }>(
    "/plan/density-matches",
    async (request, reply) => {
      const frame = frameOf(request, reply, { path: "/plan", demo });
      const { query } = request;
      const values = {
        ...keyed(names, (name) => query[name] ?? ""),
        outline: outlines.find((kind) => kind === query.outline) ?? "none",
      };
      const asked = values.density !== "" || values.uDensity !== "";
      const answered: Answered = asked ? answerTo(values, library(), frame.locale) : { problems: [] };
      const view: DensityMatchesView = { values, claims: claimOptions(library(), frame.locale), ...answered };
      const t = tellerOf(frame.locale);
      return html(
        reply,
        page({ ...frame, title: t("density-matches.title"), main: <DensityMatchesPage {...view} /> }),
        view.problems.length > 0 ? 422 : 200,
      );
    },
  );
}

function answerTo(values: Values, library: Library, locale: Locale): Answered {
  const read = readForm(matchesForm(values.outline as OutlineKind, library), values, locale);
  if ("problems" in read) return read;
  const { density: value, uDensity: u, claim, shape } = read.values;
  try {
    if (shape) volumeOf(shape);
  } catch (error) {
    return { problems: [{ fieldId: "inner", error: refusalOf(error).message }] };
  }
  const interval = [value - 2 * u, value + 2 * u] as const;
  const claimed = claim === "" ? undefined : library.metal(claim);
  const found = candidates(interval, claimed, shape, library).filter(({ id }) => id !== claimed?.id);
  const list = (kind: DensityMatchRow["kind"]) => {
    const all = found.filter((one) => one.kind === kind);
    return {
      kind,
      rows: all.slice(0, listed).map((one) => rowOf(one, locale)),
      more: Math.max(0, all.length - listed),
    };
  };
  return {
    problems: [],
    answer: {
      interval: fromTo(interval[0], interval[1], locale),
      lists: [list("single"), list("core-and-skin"), list("mixture")],
    },
  };
}

/** A density, what it is claimed as, and the lengths of its outline. */
const matchesForm = (outline: OutlineKind, library: Library) => (entry: Entries) =>
  z.intersection(
    z.object({
      ...densityEntries(entry),
      claim: entry.choice(
        library.metals.map(({ id }) => id),
        { first: "", wrong: (id) => message("metal.refusal.not-in-list", { id }) },
      ),
    }),
    shapeForm(outline, entry).transform((shape) => ({ shape })),
  );

function shapeForm(kind: OutlineKind, { number }: Entries): z.ZodType<Shape | undefined> {
  const mm = (what: Code) => number({ ...millimetres, what: message(what) });
  switch (kind) {
    case "none":
      return z.unknown().transform(() => undefined);
    case "disc":
      return z
        .object({ diameter: mm("form.field.diameter"), thickness: mm("form.field.thickness") })
        .transform(({ diameter, thickness }) => ({ kind, diameterMm: diameter, thicknessMm: thickness }));
    case "bar":
      return z
        .object({
          length: mm("form.field.length"),
          width: mm("form.field.width"),
          height: mm("form.field.height"),
        })
        .transform(({ length, width, height }) => ({
          kind,
          lengthMm: length,
          widthMm: width,
          heightMm: height,
        }));
    case "ring":
      return z
        .object({
          outer: mm("form.field.outer-diameter"),
          inner: mm("form.field.inner-diameter"),
          ringWidth: mm("form.field.band-width"),
        })
        .transform(({ outer, inner, ringWidth }) => ({
          kind,
          outerMm: outer,
          innerMm: inner,
          widthMm: ringWidth,
        }));
  }
}

function rowOf(one: Candidate, locale: Locale): DensityMatchRow {
  const { id, kind, detail, likelihood, worthMaking, separatedBy } = one;
  return {
    id,
    kind,
    ...madeOf(one, locale),
    ...(detail?.kind === "core-and-skin" && detail.skinMm
      ? { skinMm: between(detail.skinMm, locale, 2) }
      : {}),
    likelihood,
    ...(worthMaking === null ? {} : { pays: worthMaking }),
    ...(separatedBy === null ? {} : { separatedBy: separatedBy.message }),
  };
}

function madeOf({ as, detail }: Candidate, locale: Locale): Pick<DensityMatchRow, "names" | "share"> {
  const percents = ([low, high]: readonly [number, number]) =>
    `${between([100 * low, 100 * high], locale, 1)} %`;
  if (detail?.kind === "mixture")
    return {
      names: [tellValue(detail.parts[0].called, locale), tellValue(detail.parts[1].called, locale)],
      share: percents(detail.share),
    };
  if (detail?.kind === "core-and-skin")
    return {
      names: [tellValue(called(detail.core), locale), tellValue(called(detail.skin), locale)],
      share: percents(detail.skinShare),
    };
  return { names: [tellValue(called(as), locale)], share: "" };
}

function between([low, high]: readonly [number, number], locale: Locale, places: number): string {
  const [from, to] = [fixed(low, places, locale), fixed(high, places, locale)];
  return from === to ? from : `${from} – ${to}`;
}
