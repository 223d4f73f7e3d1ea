import type { ComponentChildren } from "preact";

/** One group of settings: a line with what is in use now, opened to change it. */
export function Group({
  id,
  title,
  now,
  open = false,
  children,
}: {
  id: string;
  title: string;
  /** what is in use */
  now?: ComponentChildren;
  /** an entry in it needs another look */
  open?: boolean;
  children: ComponentChildren;
}) {
  return (
    <details class="fold" id={id} open={open || undefined}>
      <summary>
        {title} <span class="note">{now}</span>
      </summary>
      <div>{children}</div>
    </details>
  );
}
