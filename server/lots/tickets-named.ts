import { Refusal } from "../../calibration/refusal.ts";
import type { LotItem } from "./lot-item.ts";

/** Text and the number a ticket ends in: A-017 is "A-" and 17. */
const numbered = (ticket: string) => /^(.*?)(\d{1,9})$/.exec(ticket);

/**
 * The pieces of a lot that somebody names: "31, 33, 40–52", a range by the numbers the tickets end in. Voided ones are
 * left out. Throws Refusal at `at` for a ticket, or an end of a range, that the lot does not have.
 */
export function ticketsNamed(typed: string, items: readonly LotItem[], at: string): LotItem[] {
  const standing = items.filter(({ voided }) => !voided);
  const found = typed
    .split(/[,;\n]+/)
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .flatMap((part) => oneOrRange(part, standing, at));
  return [...new Set(found)];
}

function oneOrRange(part: string, standing: readonly LotItem[], at: string): LotItem[] {
  const one = standing.find(({ ticket }) => ticket === part);
  if (one) return [one];
  const [from = "", to, ...more] = part.split(/\s*(?:–|—|\.\.+|…)\s*|\s+-\s+|(?<=^\d+)-(?=\d+$)/);
  const ends = [from, to].map((ticket) => standing.find((item) => item.ticket === ticket));
  if (to === undefined || more.length > 0 || ends.includes(undefined))
    throw new Refusal("lot.ticket-unknown", { ticket: ends[0] && to ? to : from }, at);
  const [, start, low] = numbered(from) ?? [];
  const [, same, high] = numbered(to) ?? [];
  if (low === undefined || start !== same) throw new Refusal("lot.ticket-range", { range: part }, at);
  return standing.filter(({ ticket }) => {
    const [, stem, number] = numbered(ticket) ?? [];
    return stem === start && Number(number) >= Number(low) && Number(number) <= Number(high);
  });
}
