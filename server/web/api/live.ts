import type { ServerResponse } from "node:http";
import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { tell } from "../../../views/messages/tell.ts";
import type { Bench } from "../../station/bench.ts";
import type { Scale } from "../../station/scale.ts";
import { mostListening, takePlace } from "../stream-places.ts";
import { documentLanguage, languageOf } from "./language.ts";
import { sendProblem } from "./problem.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";
import { type Live, live } from "./shapes.ts";

/** Pause between two events at most this short, ms: as for the bench's own page. */
const leastPauseMs = 40;
/** An event at least so often, ms: silence has an age, and a listener sees that it still hears. */
const beatMs = 1000;

/** What the balance shows: asked once, or told on every change until the listener goes. */
export function liveOfApi(app: FastifyInstance, bench: Bench, requireScope: RequireScope): void {
  const listeners = new Set<ServerResponse>();
  let due: NodeJS.Timeout | undefined;
  let sentAt = 0;
  const event = () => `data: ${JSON.stringify(liveOf(bench))}\n\n`;
  const send = () => {
    due = undefined;
    sentAt = Date.now();
    if (listeners.size === 0) return;
    const message = event();
    // whoever reads slowly misses some, and gets the newest with one of the next
    for (const response of listeners) if (!response.writableNeedDrain) response.write(message);
  };
  const changed = () => {
    if (listeners.size > 0) due ??= setTimeout(send, Math.max(0, sentAt + leastPauseMs - Date.now()));
  };
  bench.onLine(changed);
  bench.onChange(changed);
  const beat = setInterval(send, beatMs);
  beat.unref();
  app.addHook("preClose", async () => {
    clearInterval(beat);
    clearTimeout(due);
    for (const response of listeners) response.end();
  });

  const onRequest = requireScope("live:read");
  app.withTypeProvider<ZodTypeProvider>().get(
    "/api/live",
    {
      onRequest,
      schema: {
        operationId: "getLive",
        summary: "What the balance shows now, and what the bench is doing",
        ...needsToken("live:read"),
        response: { 200: live, ...refusals },
      },
    },
    async () => liveOf(bench),
  );
  app.get(
    "/api/live/events",
    {
      onRequest,
      schema: {
        operationId: "followLive",
        summary: "The same on every change, as server-sent events",
        ...needsToken("live:read"),
        response: {
          200: {
            description: tell({ code: "api.document.live" }, documentLanguage),
            content: { "text/event-stream": { schema: z.string() } },
          },
          ...refusals,
        },
      },
    },
    async (request, reply) => {
      const leave = takePlace(undefined, () => undefined);
      const sentence = message("refusal.streams", { streams: mostListening });
      if (!leave) return sendProblem(reply, 503, languageOf(request), { message: sentence });
      reply.hijack();
      reply.raw.writeHead(200, {
        "content-type": "text/event-stream; charset=utf-8",
        "cache-control": "no-store",
        "x-content-type-options": "nosniff",
      });
      reply.raw.write(event());
      listeners.add(reply.raw);
      request.raw.on("close", () => {
        leave();
        listeners.delete(reply.raw);
      });
      return reply;
    },
  );
}

function liveOf({ scale, waitingFor, item }: Bench): Live {
  return {
    balance: scale?.name ?? null,
    reading: scale ? readingOf(scale.live()) : null,
    waiting_for: waitingFor ?? null,
    piece: item && !item.closed ? { id: item.id, ticket: item.ticket, method: item.method } : null,
  };
}

/** What the balance shows; a message with its code, its values and its English words. */
function readingOf(shown: ReturnType<Scale["live"]>): Live["reading"] {
  if (shown.state === "reading") {
    const { state, text, unit, stability, at } = shown;
    return { state, text, unit, stability, at };
  }
  const { code, params = {} } = shown.message;
  return { ...shown, code, params, message: tell(shown.message, "en") };
}
