import type { Seen } from "../about.ts";

/** More open pages than any counter has; of the oldest it is no longer known what was seen there. */
const mostPages = 200;

/**
 * What whoever works at each open page has seen of the bench. A live page is drawn anew when another page does the step,
 * and its button then does the next one: a press there was meant for what stood there before.
 */
export class PagesSeen {
  readonly #seen = new Map<string, Seen>();
  #last: string | undefined;

  /** A page was drawn whole, or a form of it was answered: what it shows now has been looked at. */
  drawn(page: string | undefined, about: Seen): void {
    if (page === undefined) return;
    this.#seen.delete(page);
    this.#seen.set(page, about);
    const [oldest] = this.#seen.keys();
    if (oldest !== undefined && this.#seen.size > mostPages) this.#seen.delete(oldest);
  }

  /** A form of this page was done. */
  did(page: string | undefined): void {
    this.#last = page;
  }

  /** The version of a subject that a press on this page was meant for: an older one where another page went on since. */
  meant(page: string | undefined, { subject, seen }: Seen): number {
    const known = page === undefined ? undefined : this.#seen.get(page);
    if (known === undefined || this.#last === undefined || this.#last === page) return seen;
    return known.subject === subject ? Math.min(known.seen, seen) : 0;
  }
}
