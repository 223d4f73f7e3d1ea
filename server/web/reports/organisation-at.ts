import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import type { Organisation } from "../../../views/reports/report.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { benchSettingsShape } from "../../station/bench-settings.ts";

/** The house as the settings named it before a row of the ledger. */
export async function organisationAt(ledger: Ledger, seq: number, locale: Locale): Promise<Organisation> {
  const t = tellerOf(locale);
  const [kept] = await ledger.entries({ kind: "settings", before: seq, newestFirst: true, limit: 1 });
  const settings = kept?.kind === "settings" ? benchSettingsShape.safeParse(kept.body.settings) : undefined;
  if (!settings?.success) return {};
  const { name, address, contact, verifiedScale, verifiedUntil, accreditedBy, accreditation } =
    settings.data.house;
  const seal =
    verifiedUntil === ""
      ? verifiedScale
      : t("report.organisation.seal-until", { seal: verifiedScale, until: verifiedUntil });
  return {
    ...(name === "" ? {} : { name }),
    ...(address === "" ? {} : { address }),
    ...(contact === "" ? {} : { contact }),
    ...(verifiedScale === "" ? {} : { verifiedScale: seal }),
    ...(accreditedBy === "" || accreditation === ""
      ? {}
      : { accreditation: { body: accreditedBy, number: accreditation } }),
  };
}
