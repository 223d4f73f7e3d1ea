import { lastPlace } from "../../calibration/decimal.ts";
import { isMassUnit, stepGrams } from "../../calibration/units.ts";
import { excludedIn } from "../ledger/excluded.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { AnnouncedMass } from "../weighing/announced-mass.ts";
import type { Item } from "../weighing/item.ts";

/** The announced mass of a piece: what was told of it, else the voided weighing of its ticket in the same lot. */
export async function announcedMass(item: Item, ledger: Ledger): Promise<AnnouncedMass | undefined> {
  const announced = item.customerSupplied?.mass_g;
  if (announced !== undefined)
    return {
      shown: `${announced} g`,
      grams: Number(announced),
      stepG: lastPlace(announced),
      from: "told",
      photos: [],
    };
  if (item.ticket === "") return undefined;
  const { records } = await ledger.records({
    filters: { ticket: item.ticket, voided: true, ...(item.lot === undefined ? {} : { lot: item.lot }) },
    page: { size: 1 },
  });
  const [before] = records;
  const [, text = "", unit = ""] = /^(\S+) (\S+)$/.exec(before?.dry ?? "") ?? [];
  if (!before || !isMassUnit(unit)) return undefined;
  const entries = await ledger.entriesOf(before.subject);
  const excluded = excludedIn(entries);
  return {
    shown: before.dry,
    grams: before.dry_g,
    stepG: stepGrams(text, unit),
    from: "earlier",
    photos: entries.filter((entry) => entry.kind === "photo").filter(({ id }) => !excluded.has(id)),
  };
}
