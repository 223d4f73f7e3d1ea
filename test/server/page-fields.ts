import type { Ledger } from "../../server/ledger/ledger.ts";
import type { Bench } from "../../server/station/bench.ts";

/** Forms of the page of a settlement; they name the lot alone. */
const settlementForms: ReadonlySet<string> = new Set([
  "payout",
  "terms",
  "decisions",
  "trust",
  "reopening",
  "prints",
]);

/** A page that was drawn at this moment: what its forms name, unless the test names it. */
export async function pageFields(
  { bench, ledger }: { bench: Bench; ledger: Ledger },
  path: string,
  fields: Record<string, string>,
): Promise<Record<string, string>> {
  const entries = async (subject: string) => `${(await ledger.entriesOf(subject)).length}`;
  const [, page, id = "", form] = /^\/(records|lots)\/([^/]+)(?:\/([^/]+))?/.exec(path) ?? [];
  if (page === "records") return { version: await entries(decodeURIComponent(id)), ...fields };
  const { subject, seen } = bench.about;
  // a test that gives its piece an id of its own starts it under that id
  const own = path === "/bench/piece" || path === "/demo/piece" ? fields.key : undefined;
  const about =
    own !== undefined && bench.open?.id !== own
      ? { subject: own, version: await entries(own) }
      : { subject, version: `${seen}` };
  if (page !== "lots") return { ...about, method: bench.item?.method ?? "hung", ...fields };
  if (form !== undefined && settlementForms.has(form)) return { version: await entries(id), ...fields };
  return { ...about, lotVersion: await entries(id), ...fields };
}

/** Asks the station for what a test sets up, as a page drawn at this moment would. */
export function asked(bench: Bench) {
  const { station } = bench;
  type Role = "dry" | "immersed" | "zero" | "dry-after" | "rise";
  return {
    start: (ticket: { ticket: string; claim?: string }, subject = bench.nextPiece) =>
      station.do({
        do: "start-weighing",
        subject,
        seen: 0,
        ticket: { description: "bar", method: "hung", ...ticket },
      }),
    type: (role: Role, text: string) =>
      station.do({
        do: "take-reading",
        ...bench.about,
        role,
        reading: { text, unit: "g", takenBy: "typed", balance: "typed", lines: [] },
      }),
    take: (role: Role) => station.do({ do: "request-reading", ...bench.about, role }),
    temperature: (celsius: string) => station.do({ do: "state-temperature", ...bench.about, celsius }),
    exclude: (entry: string, reason: string) =>
      station.do({ do: "exclude-reading", ...bench.about, entry, reason }),
    record: (found = "") => station.do({ do: "write-record", ...bench.about, found }),
  };
}

/** The codes of what a page tells about a form that was not taken. */
export function codesIn(markup: string): string[] {
  return [...markup.matchAll(/data-code="([^"]+)"/g)].map(([, code = ""]) => code);
}

/** The hidden fields of the form that goes to this address, as a browser holds them from the page it was given. */
export function formOn(markup: string, action: string): Record<string, string> {
  const form = new RegExp(
    `<form[^>]*action="${action.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")}"[^>]*>(.*?)</form>`,
    "s",
  );
  const [, inside] = form.exec(markup) ?? [];
  if (inside === undefined) throw new Error(`The page has no form that goes to ${action}.`);
  const hidden = [...inside.matchAll(/<input[^>]*type="hidden"[^>]*>/g)].map(([tag]) => tag);
  const value = (tag: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1] ?? "";
  return Object.fromEntries(
    hidden
      .filter((tag) => value(tag, "name") !== "_csrf")
      .map((tag) => [value(tag, "name"), value(tag, "value")]),
  );
}
