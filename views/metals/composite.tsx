import { Facts, Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";

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
  const say = useWords().composite;
  return (
    <>
      <p>{says}</p>
      <div class="columns">
        <Sheet id="parts" title={say.madeOf}>
          <ul>
            {parts.map(({ id, name }) => (
              <li key={id}>
                <a href={`/metals/${id}`}>{name}</a>
              </li>
            ))}
          </ul>
          <Facts facts={shows} />
          <p class="hint">
            <Told says={source} />
          </p>
        </Sheet>
        <Sheet id="densities" title={say.byShare}>
          <Rows
            caption={say.sound}
            empty=""
            columns={[{ head: shareOf }, { head: "g/cm³", number: true }]}
            rows={densities.map(([share, density]) => ({ key: share, cells: [share, density] }))}
          />
        </Sheet>
      </div>
    </>
  );
}
