import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { type Entries, formIn } from "./forms/form.ts";
import { queryOf } from "./page-request.ts";

/** More open pages than any counter has; beyond it the oldest refusal is no longer drawn anew. */
const mostPages = 200;

/**
 * What was sent back to each open page and still stands there. A live redraw replaces the part the refused form stands
 * in, so it must know the refusal, or the page would lose its sentence and what was typed. It stands until the next
 * form of that page is answered, or until it is about a piece that has left the bench.
 */
export class StandingRefusals<Refused> {
  #byPage = new Map<string, { about: string | undefined; refused: Refused }>();

  /** The newest answer to a page: sent back about this piece, or with `undefined` done. */
  answered(page: string | undefined, about: string | undefined, refused: Refused | undefined): void {
    if (page === undefined) return;
    this.#byPage.delete(page);
    if (refused === undefined) return;
    this.#byPage.set(page, { about, refused });
    for (const oldest of this.#byPage.keys()) {
      if (this.#byPage.size <= mostPages) return;
      this.#byPage.delete(oldest);
    }
  }

  /** What stands on this page about this piece. */
  of(page: string | undefined, about: string | undefined): Refused | undefined {
    const standing = page === undefined ? undefined : this.#byPage.get(page);
    return standing?.about === about ? standing?.refused : undefined;
  }
}

const pageForm = ({ ifSent }: Entries) => z.object({ page: ifSent() });

/** The id a live page gives with every form and with its stream; undefined without scripts. */
export function pageIdOf(request: FastifyRequest): string | undefined {
  const { page = queryOf(request).page } = formIn(request, pageForm);
  return typeof page === "string" && /^[\w-]{1,40}$/.test(page) ? page : undefined;
}
