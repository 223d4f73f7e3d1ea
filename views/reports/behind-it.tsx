import type { BudgetLine, Report } from "../../server/reports/report.ts";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import { QrCode } from "./qr.tsx";
import { factsOf, List, Stated } from "./stated.tsx";

/** What the result rests on: method, conditions, readings, budget, and the record to check it by. */
export function BehindIt({
  method,
  corrections,
  sampling,
  deviations,
  warnings,
  conditions,
  readings,
  budget,
  record,
  onlyEnglish,
}: Report) {
  const { headings, ...say } = useWords().report;
  const notes = [...deviations, ...warnings];
  return (
    <>
      <Sheet id="method" title={headings.method}>
        <p>{method}</p>
        <p>{say.correctedFor(corrections.join("; "), sampling)}</p>
        <p>{notes.length === 0 ? say.deviations.none : say.deviations.some}</p>
        <List items={notes} onlyEnglish={onlyEnglish} />
      </Sheet>
      <Sheet id="conditions" title={headings.conditions}>
        <Facts facts={factsOf(conditions)} />
      </Sheet>
      <Sheet id="readings" title={headings.readings}>
        <Readings readings={readings} onlyEnglish={onlyEnglish} />
      </Sheet>
      <Sheet id="budget" title={headings.budget}>
        <Budget lines={budget} />
      </Sheet>
      <Sheet id="record" title={headings.record}>
        <QrCode text={`underhook record ${record.hash}`} />
        <Facts
          facts={[
            [say.record.record, say.record.place(record.subject, record.row)],
            [say.record.hash, <code key="h">{record.hash}</code>],
            [say.record.signedBy, record.keyId],
            [say.record.toCheck, record.checkHow],
            ...factsOf(record.versions),
          ]}
        />
        <p>{say.record.end}</p>
      </Sheet>
    </>
  );
}

function Readings({ readings, onlyEnglish }: Pick<Report, "readings" | "onlyEnglish">) {
  const { head, caption, empty, ...say } = useWords().report.readings;
  return (
    <Rows
      caption={caption}
      empty={empty}
      columns={[
        { head: head.what },
        { head: head.shown, number: true },
        { head: head.at },
        { head: head.from },
        { head: head.because },
      ]}
      rows={readings.map(({ what, shown, at, source, because, voided }) => ({
        key: `${at} ${what}`,
        voided: voided !== null,
        cells: [
          what,
          voided === null ? shown : `${shown} ${say.void}`,
          at,
          source,
          voided === null ? (
            <Stated key="b" says={because} onlyEnglish={onlyEnglish} />
          ) : (
            `${say.void}: ${voided}`
          ),
        ],
      }))}
    />
  );
}

function Budget({ lines }: { lines: readonly BudgetLine[] }) {
  const { head, caption, empty } = useWords().report.budget;
  return (
    <Rows
      caption={caption}
      empty={empty}
      columns={[
        { head: head.input },
        { head: head.value, number: true },
        { head: head.u, number: true },
        { head: head.unit },
        { head: head.sensitivity, number: true },
        { head: head.part, number: true },
        { head: head.share, number: true },
      ]}
      rows={lines.map(({ input, value, u, unit, sensitivity, contribution, share }) => ({
        key: input,
        cells: [input, value, u, unit, sensitivity, contribution, share],
      }))}
    />
  );
}
