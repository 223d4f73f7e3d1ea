import { Csrf } from "../forms.tsx";
import { Facts, Rows } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";

export interface NowView {
  /** what brings the readings: "balance on …", or words that nothing does */
  name: string;
  /** heard, silent, refused, gone … */
  state: string;
  /** the same as a whole sentence: what, since when, what to do */
  says: string;
  /** how its lines are read */
  readBy: string;
  /** undefined while readings are typed or simulated */
  choice?: { address: string; line?: string; asked?: string };
  /** what its answers, request and profile are bound to, and why */
  keptFor?: string | undefined;
  doubts: readonly { kind: string; says: string }[];
  /** a number that may mean two things, asked once */
  commaAsked?: { raw: string };
  lines: readonly { at: string; raw: string; meaning: string }[];
  csrfToken: string;
}

/** Fragment: the balance in use in words; renewed with every line, so nothing in it can be pressed. */
export function BalanceNow({ name, state, says, readBy, choice, keptFor }: NowView) {
  const say = useWords().beside;
  return (
    <>
      <p>
        <strong>{state}</strong>: {says}
      </p>
      <Facts
        facts={[
          ["Source", name],
          ["Line", choice?.line],
          ["Read by", readBy],
          [say.keptFor, keptFor && <Told says={keptFor} />],
          ["Asked with", choice?.asked && <code>{choice.asked}</code>],
        ]}
      />
    </>
  );
}

/** Fragment: what a person has to look at or answer about the balance in use. */
export function BalanceAsks({ choice, doubts, commaAsked, csrfToken }: NowView) {
  return (
    <>
      {doubts.map((doubt) => (
        <section key={doubt.kind} class="caution" aria-label="Look at the balance">
          <p>{doubt.says}</p>
          <form method="post" action="/balances/looked-at">
            <Csrf token={csrfToken} />
            <input type="hidden" name="kind" value={doubt.kind} />
            <button type="submit" class="plain">
              I looked: all is well
            </button>
          </form>
        </section>
      ))}
      {commaAsked && (
        <form method="post" action="/balances/comma" class="caution">
          <Csrf token={csrfToken} />
          <p>
            The line <code>{commaAsked.raw}</code> can be read in two ways. Look at the display of the
            balance: what does the comma stand for? It is asked once and kept for this balance.
          </p>
          <p class="row">
            <button type="submit" name="comma" value="decimal">
              Decimals follow it
            </button>
            <button type="submit" name="comma" value="thousands" class="plain">
              It marks the thousands
            </button>
          </p>
        </form>
      )}
      {choice && (
        <form method="post" action="/balances/typed">
          <Csrf token={csrfToken} />
          <button type="submit" class="plain">
            Close it and type readings
          </button>
        </form>
      )}
    </>
  );
}

/** Fragment: the lines as received, with what each was understood to mean. */
export function LastLines({ lines }: Pick<NowView, "lines">) {
  return (
    <Rows
      caption="Last lines as received, newest first"
      empty="Nothing has arrived yet."
      columns={[{ head: "At" }, { head: "As received" }, { head: "Understood as" }]}
      rows={lines.map(({ at, raw, meaning }, index) => ({
        key: `${at} ${index}`,
        cells: [at, <code key="r">{raw}</code>, meaning],
      }))}
    />
  );
}
