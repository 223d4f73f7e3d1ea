import type { ServerResponse } from "node:http";
import type { FastifyReply, FastifyRequest } from "fastify";
import type { Locale } from "../../views/messages/language.ts";
import { tellerOf } from "../../views/messages/tell.ts";
import { lookOf } from "./look.ts";
import { pageIdOf } from "./standing-refusals.ts";
import { browserOf, mostListening, takePlace } from "./stream-places.ts";

/** A page that listens: where to write, the token its forms carry, the language it speaks, and the parts it last got. */
interface Listener {
  response: ServerResponse;
  csrfToken: string;
  locale: Locale;
  page: string | undefined;
  last: Map<string, string>;
  /** a form of this page was answered since the last heartbeat */
  answered: boolean;
  /** something changed while it had not read what was sent; it gets the newest state as soon as it has */
  behind: boolean;
  /** heartbeats in a row at which it had not read what was sent */
  stalled: number;
}

/** Draws one part of the page for a listener; parts are named by the id of the element they fill. */
export type Draw = (csrfToken: string, locale: Locale, page: string | undefined) => string;

const leastPauseMs = 25;
/** A page that reads nothing for so many heartbeats is let go; it may come back. */
const mostStalled = 10;
/** A window whose browser has too many open comes back after so long, ms. */
const turnMs = 3000;

/**
 * Server-sent events to every open page. A change is sent at once, then at most every 25 ms, so that thirty balances of
 * twenty lines a second do not flood a phone; a heartbeat every `heartbeatMs` tells a page that it still hears.
 * A message holds whole parts and only those that changed since the page last got them; a page that joins or comes
 * back gets all of them, so it is complete after its first message. A page that reads slowly gets nothing more until it
 * has read, and then the newest state at once.
 */
export class LiveStream {
  #listeners = new Set<Listener>();
  #parts: ReadonlyMap<string, Draw>;
  #heartbeat: NodeJS.Timeout;
  #due: NodeJS.Timeout | undefined;
  #dirty = new Set<string>();
  #lastSent = 0;
  #beats = 0;

  constructor(parts: ReadonlyMap<string, Draw>, heartbeatMs: number) {
    this.#parts = parts;
    this.#heartbeat = setInterval(() => this.#beat(), heartbeatMs);
    this.#heartbeat.unref();
  }

  /** Turns the request into a stream; the reply stays open until the page goes. */
  join(request: FastifyRequest, reply: FastifyReply, csrfToken: string): void {
    const response = reply.raw;
    const leave = takePlace(browserOf(request), () => response.end(`retry: ${turnMs}\n\n`));
    if (!leave) {
      tooMany(request, reply);
      return;
    }
    reply.hijack();
    response.writeHead(200, {
      "content-type": "text/event-stream; charset=utf-8",
      "cache-control": "no-store",
      "x-content-type-options": "nosniff",
    });
    response.write("retry: 500\n\n");
    const listener: Listener = {
      response,
      csrfToken,
      locale: lookOf(request).locale,
      page: pageIdOf(request),
      last: new Map(),
      answered: false,
      behind: false,
      stalled: 0,
    };
    this.#listeners.add(listener);
    response.on("drain", () => {
      if (listener.behind) this.#sendTo(listener, this.#parts.keys());
    });
    request.raw.on("close", () => {
      leave();
      this.#listeners.delete(listener);
    });
    this.#sendTo(listener, this.#parts.keys(), this.#beats);
  }

  /** These parts may have changed: they are sent now, or as soon as the pause since the last message is over. */
  changed(...names: string[]): void {
    for (const name of names) this.#dirty.add(name);
    if (this.#due !== undefined) return;
    const pause = Math.max(0, this.#lastSent + leastPauseMs - Date.now());
    this.#due = setTimeout(() => this.#send(), pause);
  }

  /**
   * A form of this page was answered with a part of it. That answer and a message under way may overtake each other, so
   * the next heartbeat sends every part once more, whatever the page got before.
   */
  answered(page: string | undefined): void {
    for (const listener of this.#listeners) if (listener.page === page) listener.answered = true;
  }

  close(): void {
    clearInterval(this.#heartbeat);
    clearTimeout(this.#due);
    for (const { response } of this.#listeners) response.end();
    this.#listeners.clear();
  }

  #send(): void {
    this.#due = undefined;
    this.#lastSent = Date.now();
    const dirty = [...this.#dirty];
    this.#dirty.clear();
    for (const listener of this.#listeners) this.#sendTo(listener, dirty);
  }

  #beat(): void {
    this.#beats += 1;
    for (const listener of this.#listeners) {
      listener.stalled = listener.response.writableNeedDrain ? listener.stalled + 1 : 0;
      if (listener.stalled > mostStalled) listener.response.destroy();
      if (listener.answered) listener.last.clear();
      listener.answered = false;
      this.#sendTo(listener, this.#parts.keys(), this.#beats);
    }
  }

  #sendTo(listener: Listener, names: Iterable<string>, beat?: number): void {
    listener.behind = listener.response.writableNeedDrain;
    if (listener.behind || listener.response.writableEnded) return;
    const message: string[] = [];
    for (const name of names) {
      const markup = this.#parts.get(name)?.(listener.csrfToken, listener.locale, listener.page);
      if (markup === undefined || listener.last.get(name) === markup) continue;
      listener.last.set(name, markup);
      message.push(partial(name, markup));
    }
    if (beat !== undefined) message.push(partial("heartbeat", String(beat)));
    if (message.length > 0)
      listener.response.write(`data: ${message.join("").replaceAll("\n", "\ndata: ")}\n\n`);
  }
}

function tooMany(request: FastifyRequest, reply: FastifyReply): void {
  const text = tellerOf(lookOf(request).locale)("refusal.streams", { streams: mostListening });
  void reply.code(503).header("retry-after", "10").type("text/plain; charset=utf-8").send(text);
}

/** htmx morphs a partial into its own place: what did not change keeps its focus and what is being typed into it. */
function partial(name: string, markup: string): string {
  return `<hx-partial hx-target="#${name}" hx-swap="innerMorph">${markup}</hx-partial>`;
}
