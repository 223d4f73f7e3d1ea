import type { ComponentChildren } from "preact";
import type { Line, Report } from "./report.ts";

/** Lines of a report as facts of a page. */
export const factsOf = (lines: readonly Line[]) => lines.map(({ label, value }) => [label, value] as const);

/** A sentence as the report states it; one that its language does not have is marked as English. */
export function Stated({
  message,
  onlyEnglish,
}: { message: string } & Pick<Report, "onlyEnglish">): ComponentChildren {
  return onlyEnglish.includes(message) ? <span lang="en">{message}</span> : message;
}

/** Sentences one under the other; none when there are none. */
export function List({
  items,
  onlyEnglish = [],
}: {
  items: readonly string[];
  onlyEnglish?: Report["onlyEnglish"];
}) {
  if (items.length === 0) return null;
  return (
    <ul>
      {items.map((item) => (
        <li key={item}>
          <Stated message={item} onlyEnglish={onlyEnglish} />
        </li>
      ))}
    </ul>
  );
}
