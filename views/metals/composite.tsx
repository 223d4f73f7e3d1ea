import { Facts, Rows, Sheet } from "../sheet.tsx";

/** A mixture or a core under a skin, named by what it is put together from. */
export interface CompositeView {
  name: string;
  says: string;
  parts: readonly { id: string; name: string }[];
  /** what the first column of the table counts */
  shareOf: string;
  /** share and density in g/cm³, as text */
  densities: readonly (readonly [share: string, density: string])[];
  shows: readonly (readonly [name: string, value: string | undefined])[];
  source: string;
}

export function CompositePage({ says, parts, shareOf, densities, shows, source }: CompositeView) {
  return (
    <>
      <p>{says}</p>
      <div class="columns">
        <Sheet id="parts" title="Made of">
          <ul>
            {parts.map(({ id, name }) => (
              <li key={id}>
                <a href={`/metals/${id}`}>{name}</a>
              </li>
            ))}
          </ul>
          <Facts facts={shows} />
          <p class="hint">{source}</p>
        </Sheet>
        <Sheet id="densities" title="Density by share">
          <Rows
            caption="Sound metal without voids, at 20 °C"
            empty=""
            columns={[{ head: shareOf }, { head: "g/cm³", number: true }]}
            rows={densities.map(([share, density]) => ({ key: share, cells: [share, density] }))}
          />
        </Sheet>
      </div>
    </>
  );
}
