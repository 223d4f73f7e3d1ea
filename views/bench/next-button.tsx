import type { ComponentChildren } from "preact";
import { useTell } from "../messages/spoken.ts";

/**
 * The one filled button of a page, in its fixed place. Its id stays from step to step, so that a part drawn anew keeps
 * the element under a thumb.
 */
export function NextButton({
  keys = "Enter F9",
  live = false,
  children,
}: {
  keys?: string;
  /** it needs a balance that is heard */
  live?: boolean;
  children: ComponentChildren;
}) {
  return (
    <div class="thumb">
      <button
        type="submit"
        id="next"
        class="next"
        data-key={keys}
        {...(live ? { "data-needs-live": true } : {})}
      >
        {children} <kbd>Enter</kbd>
      </button>
    </div>
  );
}

/** The same place where the next thing stands further down the page. */
export function NextLink({ href, children }: { href: string; children: ComponentChildren }) {
  return (
    <div class="thumb">
      <a href={href} id="next" class="button next" data-key="Enter F9">
        {children} <kbd>Enter</kbd>
      </a>
    </div>
  );
}

/** The same place while a reading is awaited. */
export function NextWaits() {
  const t = useTell();
  return (
    <div class="thumb">
      <button type="button" id="next" class="next" aria-disabled="true" data-waiting>
        {t("bench.readings.waiting")}
      </button>
    </div>
  );
}
