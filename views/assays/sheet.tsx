import { Facts, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import type { AssayView } from "./view.ts";

/** On the page of a record: the laboratory's result beside the density, or the way to enter one. */
export function AssaySheet({ href, facts }: AssayView) {
  const say = useWords().assay;
  return (
    <Sheet id="laboratory-result" title={say.heading}>
      {facts === undefined ? <p>{say.none}</p> : <Facts facts={facts} />}
      <p>
        <a href={href}>{facts === undefined ? say.enter : say.all}</a>
      </p>
    </Sheet>
  );
}
