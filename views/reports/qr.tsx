import { encode } from "uqr";
import { useTell } from "../messages/spoken.ts";

/** A QR code as one drawn path, with its text for those who cannot scan it. Black on white in both themes. */
export function QrCode({ command, label }: { command: string; label?: string }) {
  const t = useTell();
  const { data, size } = encode(command, { ecc: "M", border: 4 });
  const dark = data.flatMap((cells, row) =>
    cells.flatMap((isDark, column) => (isDark ? [`M${column} ${row}h1v1h-1z`] : [])),
  );
  return (
    <svg
      role="img"
      aria-label={label ?? t("report.record.qr", { text: command })}
      width="140"
      height="140"
      viewBox={`0 0 ${size} ${size}`}
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={dark.join("")} fill="#000" />
    </svg>
  );
}
