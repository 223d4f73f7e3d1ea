import { tellerOf } from "../../../views/messages/tell.ts";
import { curveOf } from "../../../views/plots/curve.ts";
import type { ReportView } from "../../../views/reports/index.tsx";
import type { Report } from "../../../views/reports/report.ts";
import { recordedDensity } from "../../conformity/recorded-density.ts";
import { photoName } from "../../photos/photo-name.ts";

/** A report as its page draws it; the addresses are those of its record and its PDF. */
export function reportView(
  report: Report,
  addresses: Pick<ReportView, "recordHref" | "pdfHref">,
): ReportView {
  return { report, ...addresses, photos: photosOf(report), measured: measuredOf(report) };
}

function photosOf({ item, photos, locale }: Report): ReportView["photos"] {
  const t = tellerOf(locale);
  const ticket =
    item.find(({ label }) => label === t("report.item.ticket"))?.value ?? t("report.item.the-item");
  return photos.map(({ hash, type, shows, at: when, width, height }) => ({
    src: `/photos/${photoName({ hash, type })}`,
    ticket,
    shows,
    when,
    width,
    height,
  }));
}

/** The recorded interval as a curve; the report keeps no more of the distribution. */
function measuredOf({ plot: { value, low, high, confidence } }: Report): ReportView["measured"] {
  const u = (high - low) / 4;
  const { probabilityBelow } = recordedDensity(
    { density_g_cm3: value, u_g_cm3: u, interval_g_cm3: [low, high], interval_from: "gum" },
    confidence,
  );
  const curve = curveOf(probabilityBelow, value - 4 * u, value + 4 * u);
  return { value, u, interval: [low, high], confidence, curve };
}
