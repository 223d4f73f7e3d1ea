import type { Locale } from "../../../views/messages/language.ts";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { densityText, inLocale } from "../../../views/numbers.ts";
import type { Amendment } from "../../../views/records/amendments.tsx";
import { computeRequest } from "../../compute/contract.ts";
import type { Entry } from "../../ledger/entry.ts";
import { readingsIn } from "../../methods/index.ts";
import type { Result } from "../../reports/stated.ts";
import type { Item } from "../../weighing/item.ts";
import { isMeasured, statementOf } from "../../weighing/recorded-statement.ts";
import { type Manner, whenOf } from "../when.ts";

/** Every amendment with what it changed: of the piece, and of the result that stood until then. */
export function amendmentViews(entries: readonly Entry[], item: Item, { locale, zone }: Manner): Amendment[] {
  const t = tellerOf(locale);
  const names = {
    ticket: t("amendments.ticket"),
    description: t("amendments.piece"),
    customer: t("amendments.brought-by"),
  };
  const stands = {
    ticket: item.ticket,
    description: item.description,
    customer: item.customer ?? t("record-page.nothing"),
  };
  let result: { seq: number; body: Result } | undefined;
  return entries.flatMap((entry) => {
    if (entry.kind === "result") result = entry;
    if (entry.kind !== "amendment") return [];
    const { reason, by: one, second, piece: changed, result: next } = entry.body;
    const by = second === undefined ? one : t("signed.with-second", { by: one, second });
    const ofItem = (["ticket", "description", "customer"] as const).flatMap((name) => {
      const to = changed?.[name];
      if (to === undefined) return [];
      const from = stands[name];
      stands[name] = to;
      return [{ what: names[name], from, to }];
    });
    const ofResult = next && result ? resultChanges(result.body, next, locale) : [];
    const replaced = next && result ? { replaces: result.seq } : {};
    if (next) result = { seq: entry.seq, body: next };
    return [
      {
        id: entry.id,
        when: whenOf(entry.at, zone),
        by,
        reason,
        changes: [...ofItem, ...ofResult],
        ...replaced,
      },
    ];
  });
}

/** Density, finding and what went into them, where an amended result differs from the one before. */
function resultChanges(before: Result, after: Result, locale: Locale): Amendment["changes"] {
  const t = tellerOf(locale);
  const rowsOf = (result: Result) => {
    const { request } = result;
    const stated = statementOf(result);
    const asked = computeRequest.safeParse(request).data;
    const celsius = asked?.liquid;
    const loads = readingsIn(request);
    return [
      ...loads.map(
        ({ role, readings, unit }) =>
          [
            t(`bench.roles.${role}`),
            readings.map((text) => `${inLocale(text, locale)} ${unit}`).join(", "),
          ] as const,
      ),
      [
        t("amendments.density"),
        isMeasured(stated)
          ? `${densityText(stated.density_g_cm3, stated.expanded_g_cm3, locale)} g/cm³`
          : "–",
      ],
      [t("amendments.finding"), tell({ code: `state.${stated.conformity.state}` }, locale)],
      [
        t("amendments.water-temperature"),
        celsius?.kind === "water" ? `${inLocale(String(celsius.temperature_c), locale)} °C` : "",
      ],
    ] as const;
  };
  const then = rowsOf(before);
  return rowsOf(after).flatMap(([what, to], place) => {
    const from = then[place]?.[1] ?? "";
    return from === to ? [] : [{ what, from, to }];
  });
}
