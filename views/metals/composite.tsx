import { useTell } from "../messages/spoken.ts";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { Figures, type FigureView } from "./figures.tsx";

/** A mixture or a core under a skin, named by what it is put together from. */
export interface CompositeView {
  name: string;
  message: string;
  parts: readonly { id: string; name: string }[];
  /** what the first column of the table counts */
  shareOf: string;
  /** share and density in g/cm³, as text */
  densities: readonly (readonly [share: string, density: string])[];
  shows: readonly (readonly [name: string, value: string | undefined])[];
  figures: readonly FigureView[];
}

export function CompositePage({ message, parts, shareOf, densities, shows, figures }: CompositeView) {
  const t = useTell();
  return (
    <>
      <p>{message}</p>
      <div class="columns">
        <Sheet id="parts" title={t("composite.made-of")}>
          <ul>
            {parts.map(({ id, name }) => (
              <li key={id}>
                <a href={`/metals/${id}`}>{name}</a>
              </li>
            ))}
          </ul>
          <Facts facts={shows} />
          <Figures figures={figures} />
        </Sheet>
        <Sheet id="densities" title={t("composite.by-share")}>
          <Rows
            caption={t("composite.sound")}
            empty=""
            columns={[{ head: shareOf }, { head: "g/cm³", number: true }]}
            rows={densities.map(([share, density]) => ({ key: share, cells: [share, density] }))}
          />
        </Sheet>
      </div>
    </>
  );
}
