import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { h } from "preact";
import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { ProblemNote } from "../../views/bench/parts.tsx";
import { tellerOf } from "../../views/messages/tell.ts";
import { page, render } from "../../views/page.tsx";
import { Problem } from "../../views/problem.tsx";
import type { Sentence } from "../../views/sentence.tsx";
import { logError } from "../log.ts";
import { sendProblem } from "./api/problem.ts";
import { bodyLimit } from "./bodies.ts";
import { frameOf, lookOf } from "./look.ts";
import { html, wantsPart } from "./page-request.ts";
import { largestFile } from "./uploads.ts";

/** What was refused is said with its reason; an error of the program is written out here and owned up to there. */
export function answerErrors(app: FastifyInstance, demo: boolean): void {
  app.setErrorHandler((error: Refusal | Failed, request, reply) => {
    const status = error instanceof Refusal ? 422 : (error.statusCode ?? 500);
    const sentence = error instanceof Refusal ? error : refusalFor(error, status);
    if (status >= 500) logError(error);
    if (request.url.startsWith("/api/"))
      return sendProblem(reply, status, lookOf(request).locale, {
        message: sentence,
        at: error instanceof Refusal ? (error.at ?? "") : "",
      });
    if (wantsPart(request))
      return html(
        reply,
        render(h(ProblemNote, { problem: { message: sentence } }), lookOf(request).locale),
        status,
      );
    return html(reply, problemPage(request, reply, demo, sentence), status);
  });
  app.setNotFoundHandler((request, reply) =>
    html(reply, problemPage(request, reply, demo, message("refusal.no-page")), 404),
  );
}

function problemPage(
  request: FastifyRequest,
  reply: FastifyReply,
  demo: boolean,
  sentence: Sentence,
): string {
  const frame = frameOf(request, reply, { path: "", demo });
  return page({
    ...frame,
    title: tellerOf(frame.locale)("frame.not-done"),
    main: h(Problem, { message: sentence }),
  });
}

/** An error as the server of the pages throws it. */
type Failed = Error & { statusCode?: number; code?: string };

function refusalFor(error: Failed, status: number): Message {
  if (error.code?.startsWith("FST_CSRF")) return message("refusal.form-too-old");
  if (error.code === "FST_REQ_FILE_TOO_LARGE")
    return message("refusal.file-too-large", { mb: largestFile / 2 ** 20 });
  if (status === 429) return message("refusal.too-many");
  if (status === 413) return message("refusal.body-too-large", { kb: bodyLimit / 1024 });
  if (status < 500) return message("refusal.request", { reason: error.message });
  return message("refusal.program-error");
}
