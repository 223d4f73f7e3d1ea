import type { Message } from "../../calibration/message.ts";
import { tell } from "../../views/messages/tell.ts";

/** Says how many photos came along; 0 when all did, 1 when one is missing or was changed. */
export function toldOfPhotos({ photos, wrong }: { photos: number; wrong: readonly Message[] }): number {
  if (photos > 0)
    console.log(tell({ code: "photo.copied", params: { good: photos - wrong.length, count: photos } }, "en"));
  for (const fault of wrong) console.log(`not copied: ${tell(fault, "en")}.`);
  return wrong.length === 0 ? 0 : 1;
}

/** The same for printed reports. */
export function toldOfReports({ reports, wrong }: { reports: number; wrong: readonly string[] }): number {
  if (reports > 0)
    console.log(
      tell({ code: "report.files-copied", params: { good: reports - wrong.length, n: reports } }, "en"),
    );
  for (const fault of wrong) console.log(`not copied: ${fault}.`);
  return wrong.length === 0 ? 0 : 1;
}
