import { Csrf, Problems, TextArea } from "../forms.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";

export interface LedgerView {
  place: string;
  entries: number;
  keyId: string | null;
  /** what was found when it was opened, in sentences */
  found: readonly string[];
  handOver: HandOverView | undefined;
  /** a checkpoint made just now: the line, and the last row it vouches for */
  checkpoint?: { line: string; row: number };
  checked?:
    | {
        good: true;
        entries: number;
        checkpoints: number;
        signedUpTo: number;
        fitting: number;
        /** the list of records against the entries */
        list: { good: true; records: number } | { good: false; says: string };
      }
    | { good: false; row: number; says: string };
  /** checkpoints kept elsewhere, as typed */
  kept: string;
  problems: readonly { fieldId: string; error: string }[];
  csrfToken: string;
}

export interface HandOverView {
  state: "up-to-date" | "waiting";
  /** ISO 8601; null before the first time */
  lastAt: string | null;
  place: string | null;
  /** why it waits, in a sentence; null when it does not */
  why: string | null;
}

/** The ledger: whole or not, a checkpoint to keep elsewhere, and how far it is handed over. */
export function LedgerPage(view: LedgerView) {
  const say = useWords().ledger;
  return (
    <>
      <Problems heading={say.check.heading} problems={view.problems} />
      {view.checked && <Checked {...view} />}
      <Facts
        facts={[
          [say.title, say.entries(view.entries, view.place)],
          [say.key, view.keyId === null ? say.noKey : <code key="k">{view.keyId}</code>],
        ]}
      />
      {view.found.length > 0 && (
        <Sheet id="found" title={say.found}>
          {view.found.map((sentence) => (
            <p key={sentence}>
              <Told says={sentence} />
            </p>
          ))}
        </Sheet>
      )}
      <Checkpoint {...view} />
      <CheckForm {...view} />
      <Sheet id="hand-over" title={say.handOver.heading}>
        <HandingOver handOver={view.handOver} />
      </Sheet>
    </>
  );
}

function Checked({ checked }: LedgerView) {
  const say = useWords().ledger.check;
  if (!checked) return null;
  if (checked.good)
    return (
      <p role="status">
        <strong>{say.good(checked.entries, checked.checkpoints, checked.signedUpTo)}</strong>
        {checked.fitting > 0 && ` ${say.fitting(checked.fitting)}`}{" "}
        {checked.list.good ? say.listGood(checked.list.records) : say.listBad}
        {!checked.list.good && (
          <>
            {" "}
            <Told says={checked.list.says} />
          </>
        )}
      </p>
    );
  return (
    <p class="problems" role="alert">
      <strong>{say.bad(checked.row)}</strong> <Told says={checked.says} />
    </p>
  );
}

function Checkpoint({ checkpoint, csrfToken }: LedgerView) {
  const say = useWords().ledger.checkpoint;
  const mail = (line: string) =>
    `mailto:?subject=${encodeURIComponent(say.subject)}&body=${encodeURIComponent(line)}`;
  return (
    <Sheet id="checkpoint" title={say.heading}>
      <p>{say.lead}</p>
      {checkpoint && (
        <div role="status">
          <p>
            <strong>{say.made(checkpoint.row)}</strong> {say.line}:
          </p>
          <p class="raw">{checkpoint.line}</p>
          <p>
            <a href={mail(checkpoint.line)}>{say.send}</a>
          </p>
          <p class="hint">{say.print}</p>
          <p>{say.use}</p>
          <p class="raw">underhook verify --checkpoint "{checkpoint.line}"</p>
        </div>
      )}
      <form method="post" action="/settings/ledger/checkpoint">
        <Csrf token={csrfToken} />
        <button type="submit">{say.make}</button>
      </form>
    </Sheet>
  );
}

function CheckForm({ kept, csrfToken }: LedgerView) {
  const say = useWords().ledger.check;
  return (
    <form method="post" action="/settings/ledger/check" class="sheet">
      <h2>{say.heading}</h2>
      <Csrf token={csrfToken} />
      <p>{say.lead}</p>
      <TextArea name="kept" label={say.kept} hint={say.keptHint} value={kept} />
      <button type="submit">{say.go}</button>
    </form>
  );
}

/** How far the shared ledger is behind this bench's own, in words. */
export function HandingOver({ handOver }: { handOver: HandOverView | undefined }) {
  const say = useWords().ledger.handOver;
  if (!handOver) return <p>{say.none}</p>;
  const { state, lastAt, place, why } = handOver;
  if (state === "up-to-date")
    return (
      <p>
        {say["up-to-date"](lastAt ?? "")} {place}
      </p>
    );
  return (
    <>
      <p>
        <strong>{say.waiting}</strong> {lastAt === null ? say.never : say.last(lastAt)}
      </p>
      {why !== null && (
        <p>
          <Told says={why} />
        </p>
      )}
    </>
  );
}
