/** The last code that was scanned, and how many scans and presses of the foot switch there were. */
export interface HandsView {
  code: string;
  scans: number;
  presses: number;
}

/** What a barcode reader scanned and how often the foot switch was pressed; the script of the page acts on it. */
export function HandPart({ code, scans, presses }: HandsView) {
  return <span hidden data-scanned={code} data-scans={String(scans)} data-presses={String(presses)} />;
}
