import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellId, tellValue } from "../../../views/messages/tell.ts";
import { type WorthPage, WorthTablePage } from "../../../views/metals/worth.tsx";
import { inLocale } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { worthPerGram } from "../../conformity/worth.ts";
import { called } from "../../metals/called.ts";
import type { Library } from "../../metals/library.ts";
import { likelihoods } from "../../metals/metal.ts";
import { nextOwn, type OwnMetals } from "../../metals/own-metals.ts";
import { builtInWorth, inThousandRange, occurrences, worthRange } from "../../metals/worth-table.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { type Entries, readForm } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { problemsOf } from "../refused.ts";

type Problems = WorthPage["problems"];

/** The table of worth and occurrence: read, and changed as a new version of the owner's metals. */
export function worthRoutes(
  app: FastifyInstance,
  { library, demo }: { library: CurrentLibrary; demo: boolean },
): void {
  const show = (request: FastifyRequest, reply: FastifyReply, problems: Problems = []) => {
    const frame = frameOf(request, reply, { path: "/metals", demo });
    const view: WorthPage = {
      ...tableOf(library, frame.locale),
      values: asTyped(request),
      problems,
      kept: "kept" in queryOf(request),
      csrfToken: frame.csrfToken,
    };
    const title = tellerOf(frame.locale)("worth.title");
    return html(
      reply,
      page({ ...frame, title, main: <WorthTablePage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  };

  function change<T>(
    path: string,
    form: (entry: Entries) => z.ZodType<T>,
    changed: (of: T, own: OwnMetals | undefined) => object,
  ): void {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      const read = readForm(form, request.body, lookOf(request).locale);
      if ("problems" in read) return show(request, reply, read.problems);
      try {
        await library.keep(nextOwn(library.own, changed(read.values, library.own)));
        return reply.redirect("/worth?kept", 303);
      } catch (error) {
        return show(request, reply, problemsOf(error, "metal"));
      }
    });
  }

  app.get("/worth", async (request, reply) => show(request, reply));
  change("/worth", figuresForm, ({ worth, other_in_thousand }) => ({ worth, other_in_thousand }));
  change(
    "/worth/occurrence",
    (entry) => occurrenceForm(entry, library.now),
    ({ metal, likelihood }, own) => ({ likelihood: { ...own?.likelihood, [metal]: likelihood } }),
  );
}

const symbols = Object.keys(builtInWorth.of);

/** The owner's figures: those that differ from the built-in ones. An empty entry is the built-in figure. */
function figuresForm({ maybeNumber }: Entries) {
  const entries = (names: readonly string[], begin: string, range: { from: number; to: number }) =>
    Object.fromEntries(names.map((name) => [`${begin}-${name}`, maybeNumber(range)]));
  return z
    .object({ ...entries(symbols, "worth", worthRange), ...entries(occurrences, "offered", inThousandRange) })
    .transform((of) => ({
      worth: differing(symbols, builtInWorth.of, (symbol) => of[`worth-${symbol}`]),
      other_in_thousand: differing(occurrences, builtInWorth.otherInThousand, (one) => of[`offered-${one}`]),
    }));
}

function differing<Name extends string>(
  names: readonly Name[],
  builtIn: Readonly<Record<string, number>>,
  typed: (name: Name) => number | undefined,
): Record<string, number> {
  return Object.fromEntries(
    names.flatMap((name) => {
      const value = typed(name);
      return value === undefined || value === builtIn[name] ? [] : [[name, value]];
    }),
  );
}

const occurrenceForm = ({ choice }: Entries, library: Library) =>
  z.object({
    metal: choice(
      singles(library).map(({ id }) => id),
      { wrong: (id) => message("metal.refusal.not-in-list", { id }) },
    ),
    likelihood: choice(likelihoods),
  });

/** A family is met as often as its recipes, and an owner's metal says it itself. */
const singles = ({ metals }: Library) => metals.filter(({ recipes, family }) => !recipes && family !== "own");

function tableOf(
  { now, own }: CurrentLibrary,
  locale: Locale,
): Pick<WorthPage, "worths" | "inThousand" | "met"> {
  const { worth } = now;
  const shown = (value: number) => inLocale(String(value), locale);
  return {
    worths: symbols.map((symbol) => ({
      symbol,
      name: tellId("metal", `el-${symbol.toLowerCase()}`, locale),
      value: shown(worth.of[symbol]!),
      own: own?.worth?.[symbol] !== undefined,
    })),
    inThousand: occurrences.map((occurrence) => ({
      occurrence,
      value: shown(worth.otherInThousand[occurrence]),
      own: own?.other_in_thousand?.[occurrence] !== undefined,
    })),
    met: likelihoods.map((likelihood) => ({
      likelihood,
      metals: singles(now)
        .filter((metal) => metal.likelihood === likelihood)
        .map((metal) => ({
          id: metal.id,
          name: tellValue(called(metal), locale),
          worth: shown(+worthPerGram(metal, worth).toPrecision(2)),
          own: own?.likelihood?.[metal.id] !== undefined,
        })),
    })),
  };
}
