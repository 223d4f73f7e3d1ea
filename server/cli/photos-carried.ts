import { tell } from "../../views/messages/tell.ts";

/** Says how many photos came along; 0 when all did, 1 when one is missing or was changed. */
export function toldOfPhotos({ photos, wrong }: { photos: number; wrong: readonly string[] }): number {
  if (photos > 0) console.log(`${photos - wrong.length} of ${photos} photos came along.`);
  for (const fault of wrong) console.log(`not carried: ${fault}.`);
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
