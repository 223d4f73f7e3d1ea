import { useTell } from "../messages/spoken.ts";
import { methodViews } from "./index.ts";
import type { MethodName } from "./view.ts";

/** A line drawing of a method, with its name as title and the way of it as description. */
export function MethodDrawing({ method, id = `drawing-${method}` }: { method: MethodName; id?: string }) {
  const t = useTell();
  const { Drawing } = methodViews[method];
  return (
    <svg class="drawing" viewBox="0 0 260 190" role="img" aria-labelledby={`${id}-title`}>
      <title id={`${id}-title`}>{t(`method.${method}.title`)}</title>
      <Drawing t={t} />
    </svg>
  );
}
