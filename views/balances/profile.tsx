import { Csrf } from "../forms.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { SampleLines } from "./index.tsx";

export interface ProfileView {
  name: string;
  version: number;
  keptAt: string;
  exportHref: string;
  facts: readonly string[];
  open: readonly string[];
  samples: readonly { at: string; raw: string }[];
  /** the sample lines read by the profile now: all well, or what went wrong */
  test: string;
  inUse: boolean;
  canBeUsed: boolean;
  csrfToken: string;
}

/** One learned profile: what it says, its own test, and what can be done with it. */
export function ProfilePage(view: ProfileView) {
  return (
    <Sheet id="profile" title={view.name}>
      <Facts
        facts={[
          ["Version", String(view.version)],
          ["Kept", view.keptAt],
          ["Its own test", view.test],
          ["In use", view.inUse ? "yes" : "no"],
        ]}
      />
      <ul>
        {view.facts.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      {view.open.length > 0 && (
        <>
          <h3>Not sure</h3>
          <ul>
            {view.open.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </>
      )}
      <SampleLines lines={view.samples} />
      <div class="row">
        <a class="button" href={view.exportHref}>
          Save it as a file
        </a>
        {view.canBeUsed && (
          <form method="post" action="/balances/profiles/use">
            <Csrf token={view.csrfToken} />
            <input type="hidden" name="name" value={view.inUse ? "" : view.name} />
            <button type="submit" class="plain">
              {view.inUse ? "Go back to generic shapes" : "Read this bench's balance by it"}
            </button>
          </form>
        )}
      </div>
    </Sheet>
  );
}
