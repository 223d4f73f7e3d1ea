import { asIs } from "../as-is.ts";
import { useTell } from "../messages/spoken.ts";
import { Told } from "../told.tsx";

/** A sample line of a profile, and what the profile reads in it. */
export interface SampleView {
  raw: string;
  meaning: Told;
}

/** Sample lines of a profile, which are also its own test. */
export function SampleLines({ lines }: { lines: readonly SampleView[] }) {
  const t = useTell();
  return (
    <>
      <h3>{t("balances.sample-lines")}</h3>
      <ul>
        {lines.map(({ raw, meaning }) => (
          <li key={raw}>
            <code {...asIs}>{raw}</code> <Told says={meaning} />
          </li>
        ))}
      </ul>
    </>
  );
}
