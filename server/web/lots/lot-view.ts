import { decimalsShown } from "../../../calibration/decimal.ts";
import { entriesOf } from "../../../calibration/keyed.ts";
import type { LotRow } from "../../../views/lots/index.tsx";
import type { LotItemRow, LotStep, LotTotals, LotView, Tray } from "../../../views/lots/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tell, tellerOf, tellId } from "../../../views/messages/tell.ts";
import { densityText, fixed, inLocale } from "../../../views/numbers.ts";
import { states } from "../../conformity/state.ts";
import { nextTicketOf, stillToCome } from "../../lots/announced.ts";
import { countedFine } from "../../lots/counted-fine.ts";
import { flagsOf } from "../../lots/flags.ts";
import { isFull } from "../../lots/full.ts";
import type { Lot } from "../../lots/lot.ts";
import { doubtFlags } from "../../lots/lot-check.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import { decimalsOf, type LotSums } from "../../lots/totals.ts";
import { displayStepG } from "../../lots/weighed-mass.ts";
import type { Library } from "../../metals/library.ts";
import type { PreciousMetal } from "../../metals/precious-metal.ts";
import { rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import { standing } from "../../weighing/item.ts";
import { otherItemView } from "../bench/other-item-view.ts";
import { secondPersonView } from "../bench/second-person-view.ts";
import { nameIn } from "../records/record-view.ts";
import { type Manner, whenOf } from "../when.ts";
import { type MassManner, massRangeText, massText } from "./mass-text.ts";

/** Trays that stand there only while something lies on them. */
const seldom: ReadonlySet<string> = new Set(["no-claim", "no-valid-reading"]);
/** Tickets told on a tray and of a list, and rows shown of the pieces. */
const ticketsTold = 6;
const itemsShown = 12;

/** What is due in the lot, from the water and the piece on the bench. */
function stepOf(lot: Lot, bench: Bench): LotStep {
  const { item } = bench;
  if (lot.closed) return { ticket: "", step: "closed" };
  if (item && !item.closed) {
    if (item.lot !== lot.id) return { ticket: item.ticket, step: "elsewhere" };
    const { ticket } = item;
    const [dry, ...wet] = rolesOf(item.method);
    if (dry && standing(item, dry).length === 0) return { ticket, step: "reading", role: dry };
    if (bench.otherMass) return { ticket, step: "other-piece" };
    // what is taken and not recorded waits for the second person, or is taken again
    const role =
      wet.find((one) => standing(item, one).length === 0) ??
      (bench.secondPersonDue === undefined ? wet.at(-1) : undefined);
    return role ? { ticket, step: "reading", role } : { ticket, step: "second-person" };
  }
  return { ticket: "", step: lot.waterCelsius === undefined ? "water" : "ticket" };
}

/** The screening page, but for its live reading, claims, units and token. */
export function lotView(
  lot: Lot,
  items: readonly LotItem[],
  sums: LotSums,
  announced: Parameters<typeof stillToCome>[0],
  { bench, library, ...manner }: { bench: Bench; library: Library } & MassManner & Manner,
): Omit<
  LotView,
  | "live"
  | "units"
  | "unit"
  | "problem"
  | "claims"
  | "claim"
  | "csrfToken"
  | "about"
  | "version"
  | "stopped"
  | "closingAsks"
  | "pays"
  | "handsFree"
> {
  const { locale } = manner;
  const secondPerson = secondPersonView(bench);
  const otherItem = otherItemView(bench);
  const newestFirst = [...items].reverse();
  const current = stepOf(lot, bench);
  const full = isFull(lot, items);
  const nextTicket = full ? undefined : nextTicketOf(announced, items);
  const toCome = stillToCome(announced, items);
  const shown = newestFirst.slice(0, itemsShown);
  return {
    id: lot.id,
    name: lot.name,
    note: noteOf(lot, sums.pieces, { library, locale }),
    ...lastOf(items, current, { library, locale }),
    dots: items.flatMap(({ ticket, density, state, voided }) =>
      density && !voided ? [{ ticket, value: density.value, state }] : [],
    ),
    bands: bandsOf([lot.claim, ...items.map(({ claim }) => claim)], { library, locale }),
    current,
    ...(secondPerson ? { secondPerson } : {}),
    ...(otherItem ? { otherItem } : {}),
    ...(full ? { full: { counted: lot.count! } } : {}),
    ...(nextTicket === undefined ? {} : { nextTicket }),
    ...(toCome.length === 0
      ? {}
      : {
          waiting: {
            count: toCome.length,
            tickets: `${toCome
              .slice(0, ticketsTold)
              .map(({ ticket }) => ticket)
              .join(", ")}${toCome.length > ticketsTold ? " …" : ""}`,
          },
        }),
    water: inLocale(lot.waterCelsius ?? "", locale),
    trays: states
      .map((state) => tray(state, newestFirst, manner))
      .filter(({ state, pieces }) => pieces > 0 || !seldom.has(state)),
    totals: totalsOf(lot, sums, manner),
    checks: sums.checks,
    items: shown.map((item) => itemRow(item, { lot, library, sums, ...manner })),
    more: Math.max(0, items.length - itemsShown),
    claimsHere: [...new Set(items.flatMap(({ claim }) => claim ?? []))].map((id) => ({
      id,
      name: nameIn(library, id, locale),
    })),
    flagNames: doubtFlags.map((id) => ({ id, name: flagName(id, locale) })),
    ...(lot.closed ? { closed: closedView(lot.closed, manner) } : {}),
  };
}

/** "12 of 40 counted · claimed as gold 585". */
function noteOf(lot: Lot, pieces: number, { library, locale }: Named): string {
  const t = tellerOf(locale);
  const count =
    lot.count === undefined
      ? t("lots.note.pieces", { pieces })
      : t("lots.totals.of", { pieces, counted: lot.count });
  if (lot.claim === undefined) return count;
  return `${count} · ${t("lots.note.claim", { claim: nameIn(library, lot.claim, locale) })}`;
}

/** The piece recorded last, until the next one is weighed dry. */
function lastOf(
  items: readonly LotItem[],
  current: LotStep,
  { library, locale }: Named,
): Pick<LotView, "last"> {
  const item = items.at(-1);
  const isNext = current.step === "ticket" || (current.step === "reading" && current.role === "dry");
  if (!item || item.voided || !isNext) return {};
  const claimName = item.claim === null ? "" : nameIn(library, item.claim, locale);
  return { last: { ticket: item.ticket, claimName, state: item.state } };
}

/** The bands of these claims, each once. */
function bandsOf(
  claims: readonly (string | null | undefined)[],
  { library, locale }: Named,
): LotView["bands"] {
  return [...new Set(claims)].flatMap((id) => {
    if (!id || !library.has(id)) return [];
    const { low, high } = library.metal(id).densityGPerCm3;
    return [{ id, name: nameIn(library, id, locale), low, high }];
  });
}

interface Named {
  library: Library;
  locale: Locale;
}

function tray(state: Tray["state"], newestFirst: readonly LotItem[], manner: MassManner): Tray {
  const on = newestFirst.filter((item) => item.state === state && !item.voided);
  const massG = on.reduce((sum, { dryG }) => sum + dryG, 0);
  return {
    state,
    pieces: on.length,
    mass:
      on.length === 0
        ? "–"
        : massText(massG, decimalsOf(Math.max(0, ...on.map(({ stepG }) => stepG))), manner),
    tickets: on.slice(0, ticketsTold).map(({ ticket }) => ticket),
  };
}

function totalsOf(lot: Lot, sums: LotSums, manner: MassManner): LotTotals {
  const { locale } = manner;
  const t = tellerOf(locale);
  const { pieces, sumG, withinG, missingG, fine } = sums;
  const grams = (g: number) => `${fixed(g, sums.decimals, locale)} g`;
  return {
    pieces: lot.count === undefined ? `${pieces}` : t("lots.totals.of", { pieces, counted: lot.count }),
    sum: massText(sumG, sums.decimals, manner),
    ...(lot.gross
      ? { gross: asItCame(lot.gross, Number(lot.gross.grams), displayStepG(lot.gross), manner) }
      : {}),
    ...(missingG === undefined
      ? {}
      : {
          against:
            Math.abs(missingG) <= withinG
              ? t("lots.totals.agree", { within: grams(withinG) })
              : missingG > 0
                ? t("lots.totals.not-yet", { grams: grams(missingG) })
                : t("lots.totals.too-much", { grams: grams(-missingG) }),
        }),
    fine: fineWords(fine, manner),
  };
}

/** A reading in the unit it came in, then in grams and the second unit where those are others. */
function asItCame(
  { text, unit }: { text: string; unit: string },
  grams: number,
  stepG: number,
  manner: MassManner,
): string {
  if (unit === "g") return massText(grams, decimalsOf(stepG), manner);
  const came = `${inLocale(text, manner.locale)} ${unit}`;
  const second = manner.second === unit ? "none" : manner.second;
  return `${came} = ${massText(grams, decimalsOf(stepG), { ...manner, second })}`;
}

function fineWords(fine: LotSums["fine"], manner: MassManner): string[] {
  const { locale } = manner;
  const t = tellerOf(locale);
  const each = entriesOf(fine);
  if (each.length === 0) return [t("lots.totals.none-yet")];
  return each.map(([metal, { lowG, highG }]) =>
    massRangeText([lowG, highG], 2, manner, t(`lots.metals.${metal}`)),
  );
}

function flagName(flag: string, locale: Locale): string {
  return tellId("lots.flag-names", flag, locale);
}

function itemRow(
  item: LotItem,
  { lot, library, sums, ...manner }: { lot: Lot; library: Library; sums: LotSums } & MassManner,
): LotItemRow {
  const { id, ticket, claim, state, dryG, stepG, shown, density, voided } = item;
  const fine = countedFine(item).find((one) => one.metal === item.metal);
  const { locale } = manner;
  return {
    recordId: id,
    ticket,
    claimName: claim === null ? "" : nameIn(library, claim, locale),
    dry: asItCame(shown, dryG, stepG, manner),
    ...(density ? { density: densityText(density.value, density.expanded, locale) } : {}),
    state,
    ...(fine ? { fine: massRangeText([fine.lowG, fine.highG], 2, manner) } : {}),
    flags: flagsOf(item, sums.checks, lot.flags).map(({ flag, ...said }) => ({
      name: flagName(flag, locale),
      ...said,
    })),
    voided,
  };
}

function closedView(
  closed: NonNullable<Lot["closed"]>,
  manner: MassManner & Manner,
): NonNullable<LotView["closed"]> {
  const t = tellerOf(manner.locale);
  const grams = (text: string) => massText(Number(text), decimalsShown(text), manner);
  const when = whenOf(closed.at, manner.zone);
  const fine = entriesOf(closed.fine_g)
    .map(([metal, { low, high }]) =>
      massRangeText([Number(low), Number(high)], decimalsShown(low), manner, t(`lots.metals.${metal}`)),
    )
    .join("; ");
  const paid = (closed.settlement?.totals ?? [])
    .map(({ paid, currency }) => `${inLocale(paid, manner.locale)} ${currency}`)
    .join(" + ");
  const facts: [string, string][] = [
    [t("lots.closing.facts.when"), when],
    [t("lots.closing.facts.by"), closed.by ?? ""],
    [t("lots.closing.facts.pieces"), `${closed.pieces}`],
    [t("lots.closing.facts.sum"), grams(closed.sum_g)],
    [t("lots.closing.facts.missing"), closed.missing_g === undefined ? "" : grams(closed.missing_g)],
    [t("lots.closing.facts.fine"), fine],
    [t("lots.closing.facts.flagged"), `${closed.flagged}`],
    ...(closed.answers ?? []).map(({ asked, found }): [string, string] => [
      tell(asked, manner.locale),
      found,
    ]),
    [t("lots.closing.facts.note"), closed.note ?? ""],
    [t("lots.closing.facts.paid"), paid],
  ];
  return { when, facts: facts.filter(([, value]) => value !== "") };
}

/** One line of the list of lots. */
export function lotRow(
  { lot, pieces, priced: metals }: { lot: Lot; pieces: number; priced: readonly PreciousMetal[] },
  { locale, zone }: Manner,
): LotRow {
  const t = tellerOf(locale);
  const priced = metals.map((metal) => t(`lots.metals.${metal}`));
  return {
    id: lot.id,
    name: lot.name,
    opened: whenOf(lot.openedAt, zone),
    pieces,
    gross: lot.gross ? `${inLocale(lot.gross.text, locale)} ${lot.gross.unit}` : t("lots.not-weighed"),
    state: [
      lot.closed ? t("lots.closed", { when: whenOf(lot.closed.at, zone) }) : t("lots.open"),
      ...(priced.length === 0 ? [] : [t("lots.priced", { metals: priced.join(t("lots.and")) })]),
    ].join("; "),
  };
}
