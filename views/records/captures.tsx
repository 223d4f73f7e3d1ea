import { asIs } from "../as-is.ts";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows } from "../sheet.tsx";

/** One captured reading with the lines it came from. */
export interface Capture {
  id: string;
  /** dry, immersed, rise, zero, check weight … */
  role: string;
  /** as shown by the balance or typed: "31.1035 g" */
  reading: string;
  when: string;
  /** "balance on …" or "typed" */
  from: Sentence;
  /** why it counted as settled: the balance's own mark, scatter, or taken by hand */
  settled: string;
  voided?: { when: string; by?: string; reason: string };
  /** lines as received, control characters escaped, with their times */
  lines: readonly { at: string; raw: string }[];
}

/** Every reading in order, the voided ones struck through with their reason, and the lines as received. */
export function Captures({ captures }: { captures: readonly Capture[] }) {
  const t = useTell();
  const lines = captures.reduce((sum, one) => sum + one.lines.length, 0);
  return (
    <>
      <Rows
        caption={t("captures.caption")}
        empty={t("captures.empty")}
        columns={[
          { head: t("captures.reading") },
          { head: t("captures.value"), number: true },
          { head: t("captures.taken") },
          { head: t("captures.from") },
          { head: t("captures.rest-by") },
          { head: t("captures.state") },
        ]}
        rows={captures.map((one) => ({
          key: one.id,
          cells: [
            one.role,
            <span {...asIs} key="v" class={one.voided ? "voided" : ""}>
              {one.reading}
            </span>,
            one.when,
            <Sentence key="f" message={one.from} />,
            one.settled,
            one.voided
              ? t("captures.voided", { reason: one.voided.reason, when: one.voided.when })
              : t("captures.kept"),
          ],
        }))}
      />
      {lines > 0 && (
        <details>
          <summary>{t("captures.lines", { count: lines })}</summary>
          {captures
            .filter((one) => one.lines.length > 0)
            .map((one) => (
              <RawLines key={one.id} title={`${one.role}, ${one.reading}`} lines={one.lines} />
            ))}
        </details>
      )}
    </>
  );
}

/** Lines exactly as they came, each with its time. */
function RawLines({ title, lines }: { title: string; lines: readonly { at: string; raw: string }[] }) {
  return (
    <>
      <h3>{title}</h3>
      <pre {...asIs}>{lines.map(({ at, raw }) => `${at}  ${raw}\n`).join("")}</pre>
    </>
  );
}
