import type { ComponentChildren } from "preact";
import { asIs } from "./as-is.ts";

/** First line of a page: its name or that of its piece, what it is, and what may be done with all of it. */
export function TitleLine({
  title,
  note,
  typed = false,
  children,
}: {
  title: string;
  note?: ComponentChildren;
  /** the title is what somebody typed, and is never translated */
  typed?: boolean;
  children?: ComponentChildren;
}) {
  return (
    <div class="title-line">
      <h1 {...(typed ? asIs : {})}>{title}</h1>
      <p class="note">{note}</p>
      {children}
    </div>
  );
}
