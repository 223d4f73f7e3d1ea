import { randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { waterRange } from "../../../calibration/water.ts";
import {
  BenchMain,
  BenchPhotos,
  heartbeatSeconds,
  LiveHeading,
  LivePart,
  OtherTests,
  PiecePart,
  ResultPart,
} from "../../../views/bench/index.tsx";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { isMethod, isRole, type Role } from "../../methods/index.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Bench } from "../../station/bench.ts";
import { benchView, checksAbout, questionsBeforeRecord } from "../../station/bench-view.ts";
import type { BenchView, LiveView, Problem } from "../../station/view.ts";
import {
  boxes,
  type DetailField,
  type NumberFieldName,
  numberFields,
  wordFields,
} from "../../weighing/detail-fields.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { roleNames } from "../../weighing/role-names.ts";
import { withStated } from "../../weighing/stated.ts";
import { toldOfPiece } from "../../weighing/told-of-piece.ts";
import { typedDetails } from "../../weighing/typed-details.ts";
import { typedCelsius, typedReading } from "../../weighing/typed-reading.ts";
import type { RefusedForm } from "../evidence/size-view.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf, lookOf, ownMark } from "../look.ts";
import { fieldsOf, html, wantsPart } from "../page-request.ts";
import { benchPhotos } from "../photos/photo-view.ts";
import { refusalOf, refusedBy } from "../refused.ts";
import { pageIdOf, StandingRefusals } from "../standing-refusals.ts";
import { benchTestRoutes } from "./bench-test-routes.tsx";
import { BenchTests } from "./bench-tests.ts";
import { otherPieceView } from "./other-piece-view.ts";

/** A refusal names a field in English, and is told in the page's language as any sentence is. */
const english = tellerOf("en");
const detailNames = Object.fromEntries(
  [...wordFields, ...boxes, ...(Object.keys(numberFields) as NumberFieldName[])].map((field) => [
    field,
    english(`weighing.fields.${field}`),
  ]),
) as Record<DetailField, string>;

/** How often the live part is looked at although no line came, so that silence shows its age. */
const ageEveryMs = 1000;

/** A change of the bench that a form asks for. Throws Refusal or LedgerTrouble when it is not done. */
export type BenchDeed = (fields: Record<string, string>, request: FastifyRequest) => Promise<void> | void;

/** The Bench page, its forms and its live stream. A new bench is first asked how it weighs. */
export function benchRoutes(
  app: FastifyInstance,
  {
    bench,
    ledger,
    balance,
    demo,
    isNew,
  }: { bench: Bench; ledger: Ledger; balance: BalanceInUse; demo: boolean; isNew: () => boolean },
) {
  const live = (): LiveView => ({
    live: bench.scale?.live(),
    waitingFor: bench.waitingFor,
    waitsBecause: bench.scale?.waitsBecause?.(),
    eachLoad: bench.eachLoad,
  });
  const view = (token: string, problem?: Problem): BenchView => {
    const otherPiece = otherPieceView(bench);
    return { ...benchView(bench, token, demo, problem), ...(otherPiece ? { otherPiece } : {}) };
  };
  const tests = new BenchTests(bench, ledger);
  const aboutNow = () => bench.piece?.id;
  const refusals = new StandingRefusals<Problem>();
  const refusedTests = new StandingRefusals<RefusedForm>();
  const refusedPhotos = new StandingRefusals<string>();
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["live-heading", (_, locale) => render(<LiveHeading scaleName={bench.scale?.name} />, locale)],
      ["live-reading", (_, locale) => render(<LivePart {...live()} />, locale)],
      [
        "piece",
        (token, locale, from) =>
          render(<PiecePart view={view(token, refusals.of(from, aboutNow()))} />, locale),
      ],
      [
        "photos",
        (token, locale, from) => {
          const photos = benchPhotos(bench.piece, token, refusedPhotos.of(from, aboutNow()));
          return render(<BenchPhotos photos={photos} />, locale);
        },
      ],
      [
        "other-tests",
        (token, locale, from) =>
          render(<OtherTests tests={tests.view(token, refusedTests.of(from, aboutNow()))} />, locale),
      ],
      ["result", (token, locale) => render(<ResultPart view={view(token)} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  let checksShown = 0;
  let immersionShown = "";
  bench.onLine(() => {
    stream.changed("live-reading");
    const immersion = bench.waitingFor && bench.piece ? checksAbout(bench, bench.piece) : [];
    const found = immersion.map(({ code }) => code).join();
    if (bench.waitingFor && found !== immersionShown) {
      immersionShown = found;
      stream.changed("piece");
    }
    const checks = bench.scale?.checks().length ?? 0;
    if (checks !== checksShown) stream.changed("piece");
    checksShown = checks;
  });
  bench.onChange(() =>
    stream.changed("live-heading", "live-reading", "piece", "result", "photos", "other-tests"),
  );
  balance.onBeside((what) => what === "list" && stream.changed("piece"));
  const ageing = setInterval(() => stream.changed("live-reading"), ageEveryMs);
  ageing.unref();
  app.addHook("onClose", async () => clearInterval(ageing));
  app.addHook("preClose", async () => stream.close());

  function whole(
    request: FastifyRequest,
    reply: FastifyReply,
    problem?: Problem,
    refused?: RefusedForm,
  ): string {
    const frame = frameOf(request, reply, { path: "/", demo });
    return page({
      ...frame,
      title: tellerOf(frame.locale)("bench.title"),
      main: (
        <BenchMain
          view={view(frame.csrfToken, problem)}
          live={live()}
          tests={tests.view(frame.csrfToken, refused)}
          photos={benchPhotos(bench.piece, frame.csrfToken)}
          pageId={randomUUID()}
        />
      ),
    });
  }

  function answer(request: FastifyRequest, reply: FastifyReply, problem?: Problem): FastifyReply {
    const status = problem ? 422 : 200;
    if (wantsPart(request)) {
      answered(refusals, request, problem);
      return html(
        reply,
        render(<PiecePart view={view(reply.generateCsrf(), problem)} />, lookOf(request).locale),
        status,
      );
    }
    return problem ? html(reply, whole(request, reply, problem), status) : reply.redirect("/", 303);
  }

  /** A form of a live page is answered with its part; what is sent back stands in every redraw of that part. */
  function answered<Refused>(
    standing: StandingRefusals<Refused>,
    request: FastifyRequest,
    refused: Refused | undefined,
  ): void {
    const from = pageIdOf(request);
    standing.answered(from, aboutNow(), refused);
    stream.answered(from);
  }

  /** A form of the bench: what it asks is done, or refused in words with everything typed still in its field. */
  function deed(path: string, does: BenchDeed): void {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      const fields = fieldsOf(request);
      try {
        await does(fields, request);
        return answer(request, reply);
      } catch (error) {
        const { says, field } = refusalOf(error);
        return answer(request, reply, { says, field, typed: fields });
      }
    });
  }

  app.get("/", async (request, reply) => {
    if (isNew()) return reply.redirect("/first-start", 303);
    await tests.look();
    return html(reply, whole(request, reply));
  });
  benchTestRoutes(app, {
    bench,
    tests,
    whole,
    answered: (request, refused) => answered(refusedTests, request, refused),
  });
  app.get("/bench/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));

  deed("/bench/piece", (fields, request) => {
    const { ticket = "", description = "", claim = "", method = "", key = "" } = fields;
    const named = ticket.trim();
    if (named === "") throw new Refusal("The ticket is empty. Right: a short name such as A-17.", "ticket");
    if (!isMethod(method))
      throw new Refusal(`"${method}" is no way to weigh. Right: one of the three on the form.`, "method");
    if (claim !== "" && !bench.library.has(claim))
      throw new Refusal(`No metal is called "${claim}" here. Right: one of the list.`, "claim");
    return bench.openPiece(
      {
        ticket: named,
        description: description.trim(),
        method,
        ...(claim === "" ? {} : { claim }),
        ...toldOfPiece(fields, ownMark(request)),
      },
      key || bench.nextPiece,
    );
  });
  /** What somebody typed and that goes back is noted first, so that nothing read off a balance is lost. */
  async function askedAbout<T>(typed: string, note: string, read: () => T): Promise<T> {
    try {
      return read();
    } catch (error) {
      if (typed.trim() !== "" && refusedBy(error)) await bench.keepNote(note);
      throw error;
    }
  }
  deed("/bench/balance", ({ address = "" }) => balance.takeFrom(address));
  deed("/bench/captures", ({ role = "" }) => bench.requestCapture(mustBeRole(role)));
  deed("/bench/each-load", ({ role = "" }) => bench.takeEachLoad(mustBeRole(role)));
  deed("/bench/each-load/end", () => bench.endEachLoad());
  deed("/bench/capture-by-hand", () => bench.takeByHand());
  deed("/bench/capture-cancelled", () => bench.cancelCapture());
  deed("/bench/balance-looked-at", ({ kind = "" }) => bench.answerCheck(kind));
  deed("/bench/typed-readings", async ({ role = "", reading = "", unit = "g", key }, request) => {
    const of = mustBeRole(role);
    const typed = await askedAbout(
      reading,
      `Typed as ${roleNames[of]} reading and asked about: ${reading.trim().slice(0, 40)} ${unit.slice(0, 8)}.`,
      () => {
        const load = of === "zero" ? "zero" : "load";
        return typedReading(reading, unit, { of: load, mark: ownMark(request), at: "reading" });
      },
    );
    return bench.typeReading(of, typed, key);
  });
  deed("/bench/water", async ({ celsius = "", key }, request) => {
    const typed = await askedAbout(
      celsius,
      `Typed as water temperature and asked about: ${celsius.trim().slice(0, 40)} °C.`,
      () => typedCelsius(celsius, waterRange, { mark: ownMark(request), at: "celsius" }),
    );
    return bench.stateWater(typed, key);
  });
  deed("/bench/details", ({ key, ...fields }, request) =>
    bench.stateDetails(({ method }) => typedDetails(fields, method, detailNames, ownMark(request)), key),
  );
  deed("/bench/stated", ({ key, ...fields }, request) =>
    bench.stateDetails((piece) => withStated(piece, fields, ownMark(request)), key),
  );
  deed("/bench/captures/:capture/voiding", ({ reason = "" }, request) =>
    bench.setAsideCapture((request.params as { capture: string }).capture, reason),
  );
  deed("/bench/right-piece", ({ rightReason = "", rightBy = "" }) =>
    bench.sayRightPiece(rightReason, rightBy),
  );
  deed("/bench/other-piece", () => bench.openAgain());
  deed("/bench/changed-over", () => bench.changeOver());
  deed("/bench/piece-set-aside", ({ reason = "" }) => bench.setAsidePiece(reason));
  deed("/bench/record", async ({ found = "", key }) => {
    const asked = questionsBeforeRecord(bench);
    if (asked.length > 0) {
      if (found.trim() === "")
        throw new Refusal(
          "A question about this weighing is open. Say what you found before the record is written; it stands there.",
          "found",
        );
      const asks = asked.map(({ code, params }) => tell({ code: `${code}.ask`, params }, "en")).join(" ");
      await bench.keepNote(`Asked before the record: ${asks} Found: “${found.trim().slice(0, 400)}”`, key);
    }
    await bench.record();
  });
  return {
    deed,
    photoAnswered: (request: FastifyRequest, problem: string | undefined) =>
      answered(refusedPhotos, request, problem),
  };
}

function mustBeRole(role: string): Role {
  if (isRole(role)) return role;
  throw new Refusal(`"${role}" is no reading of a weighing. Reload the page and use its form.`);
}
