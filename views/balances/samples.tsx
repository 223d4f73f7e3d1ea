import { asIs } from "../as-is.ts";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";

/** A sample line of a profile, and what the profile reads in it. */
export interface SampleView {
  raw: string;
  meaning: Sentence;
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
            <code {...asIs}>{raw}</code> <Sentence message={meaning} />
          </li>
        ))}
      </ul>
    </>
  );
}
