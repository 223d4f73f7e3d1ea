import { Csrf, type FieldProblem, Problems, TextArea } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Sheet } from "../sheet.tsx";

export interface LedgerView {
  place: string;
  entries: number;
  keyId: string | null;
  /** the key that is trusted from outside the data folder, and the file that names it */
  pin: { file: string; keyId: string | null };
  /** what was found when it was opened, */
  found: readonly Sentence[];
  replication: ReplicationView | undefined;
  witnesses: WitnessesView;
  /** a checkpoint made just now: the line, and the last row it vouches for */
  checkpoint?: { line: string; row: number };
  checked?:
    | {
        good: true;
        entries: number;
        checkpoints: number;
        signedUpTo: number;
        fitting: number;
        /** what the check cannot show */
        notShown: readonly Sentence[];
        /** the list of records against the entries */
        list: { good: true; records: number } | { good: false; message: Sentence };
      }
    | { good: false; row: number; message: Sentence };
  /** checkpoints kept elsewhere, as typed */
  kept: string;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Who cosigns, as typed; and the keys by which this ledger is known and cosigns, null without a key. */
export interface WitnessesView {
  folders: string;
  benches: string;
  of: string;
  signs: string | null;
  cosigns: string | null;
  states: readonly { witness: string; upTo: number | null; at: string | null; why: Sentence | null }[];
}

export interface ReplicationView {
  state: "up-to-date" | "waiting";
  /** ISO 8601; null before the first time */
  lastAt: string | null;
  place: string | null;
  /** entries that the shared ledger does not have yet; null before it was first reached */
  toSend: number | null;
  /** why it waits; null when it does not */
  why: Sentence | null;
}

/** The ledger: whole or not, a checkpoint to keep elsewhere, and how far it is handed over. */
export function LedgerPage(view: LedgerView) {
  const t = useTell();
  return (
    <>
      <Problems heading={t("ledger-page.check.heading")} problems={view.problems} />
      {view.checked && <Checked {...view} />}
      <Facts
        facts={[
          [t("ledger-page.title"), t("ledger-page.entries", { count: view.entries, place: view.place })],
          [
            t("ledger-page.key"),
            view.keyId === null ? t("ledger-page.no-key") : <code key="k">{view.keyId}</code>,
          ],
          [
            t("ledger-page.pin"),
            view.pin.keyId === null ? (
              t("ledger-page.no-pin", { file: view.pin.file })
            ) : (
              <code key="p">{view.pin.keyId}</code>
            ),
          ],
        ]}
      />
      {view.found.length > 0 && (
        <Sheet id="found" title={t("ledger-page.found")}>
          {view.found.map((sentence) => (
            <p key={typeof sentence === "string" ? sentence : sentence.code}>
              <Sentence message={sentence} />
            </p>
          ))}
        </Sheet>
      )}
      <Checkpoint {...view} />
      <CheckForm {...view} />
      <KeyProcedures file={view.pin.file} />
      <Witnesses witnesses={view.witnesses} csrfToken={view.csrfToken} />
      <Sheet id="hand-over" title={t("ledger-page.replication.heading")}>
        <Replication replication={view.replication} />
      </Sheet>
    </>
  );
}

function Checked({ checked }: LedgerView) {
  const t = useTell();
  if (!checked) return null;
  if (checked.good)
    return (
      <p role="status">
        <strong>
          {t("ledger-page.check.good", {
            entries: checked.entries,
            checkpoints: checked.checkpoints,
            signedUpTo: checked.signedUpTo,
          })}
        </strong>
        {checked.fitting > 0 && ` ${t("ledger-page.check.fitting", { count: checked.fitting })}`}{" "}
        {checked.list.good
          ? t("ledger-page.check.list-good", { records: checked.list.records })
          : t("ledger-page.check.list-bad")}
        {!checked.list.good && (
          <>
            {" "}
            <Sentence message={checked.list.message} />
          </>
        )}
        {checked.notShown.map((message) => (
          <span key={typeof message === "string" ? message : message.code}>
            {" "}
            <Sentence message={message} />
          </span>
        ))}
      </p>
    );
  return (
    <p class="problems" role="alert">
      <strong>{t("ledger-page.check.bad", { row: checked.row })}</strong>{" "}
      <Sentence message={checked.message} />
    </p>
  );
}

function Checkpoint({ checkpoint, csrfToken }: LedgerView) {
  const t = useTell();
  const mail = (line: string) =>
    `mailto:?subject=${encodeURIComponent(t("ledger-page.checkpoint.subject"))}&body=${encodeURIComponent(line)}`;
  return (
    <Sheet id="checkpoint" title={t("ledger-page.checkpoint.heading")}>
      <p>{t("ledger-page.checkpoint.lead")}</p>
      {checkpoint && (
        <div role="status">
          <p>
            <strong>{t("ledger-page.checkpoint.made", { row: checkpoint.row })}</strong>{" "}
            {t("ledger-page.checkpoint.line")}:
          </p>
          <p class="raw">{checkpoint.line}</p>
          <p>
            <a href={mail(checkpoint.line)}>{t("ledger-page.checkpoint.send")}</a>
          </p>
          <p class="hint">{t("ledger-page.checkpoint.print")}</p>
          <p>{t("ledger-page.checkpoint.use")}</p>
          <p class="raw">
            <code>underhook verify --checkpoint "{checkpoint.line}"</code>
          </p>
        </div>
      )}
      <form method="post" action="/settings/ledger/checkpoint">
        <Csrf token={csrfToken} />
        <button type="submit">{t("ledger-page.checkpoint.make")}</button>
      </form>
    </Sheet>
  );
}

function CheckForm({ kept, csrfToken }: LedgerView) {
  const t = useTell();
  return (
    <form method="post" action="/settings/ledger/check" class="sheet">
      <h2>{t("ledger-page.check.heading")}</h2>
      <Csrf token={csrfToken} />
      <p>{t("ledger-page.check.lead")}</p>
      <TextArea
        name="kept"
        label={t("ledger-page.check.kept")}
        hint={t("ledger-page.check.kept-hint")}
        value={kept}
      />
      <button type="submit">{t("ledger-page.check.go")}</button>
    </form>
  );
}

function Witnesses({ witnesses, csrfToken }: Pick<LedgerView, "witnesses" | "csrfToken">) {
  const t = useTell();
  const { folders, benches, of, signs, cosigns, states } = witnesses;
  return (
    <Sheet id="witnesses" title={t("ledger-page.witnesses.heading")}>
      <p>{t("ledger-page.witnesses.lead")}</p>
      {states.map(({ witness, upTo, at, why }) => (
        <p key={witness}>
          {t("ledger-page.witnesses.state", { witness, upTo: upTo ?? 0, at: at ?? "" })}{" "}
          {why !== null && (
            <strong>
              <Sentence message={why} />
            </strong>
          )}
        </p>
      ))}
      <details>
        <summary>{t("ledger-page.witnesses.go")}</summary>
        <form method="post" action="/settings/ledger/witnesses">
          <Csrf token={csrfToken} />
          <TextArea
            name="folders"
            label={t("ledger-page.witnesses.folders")}
            hint={t("ledger-page.witnesses.folders-hint")}
            value={folders}
          />
          <TextArea
            name="benches"
            label={t("ledger-page.witnesses.benches")}
            hint={t("ledger-page.witnesses.benches-hint")}
            value={benches}
          />
          <TextArea
            name="of"
            label={t("ledger-page.witnesses.of")}
            hint={t("ledger-page.witnesses.of-hint")}
            value={of}
          />
          {signs !== null && cosigns !== null && (
            <Facts
              facts={[
                [t("ledger-page.witnesses.signs"), <code key="s">{signs}</code>],
                [t("ledger-page.witnesses.cosigns"), <code key="c">{cosigns}</code>],
              ]}
            />
          )}
          <p class="hint">{t("ledger-page.witnesses.shared")}</p>
          <button type="submit">{t("ledger-page.witnesses.go")}</button>
        </form>
      </details>
    </Sheet>
  );
}

const procedures = [
  ["change", "ledger-page.key-procedures.change", "ledger-page.key-procedures.change-steps"],
  ["loss", "ledger-page.key-procedures.loss", "ledger-page.key-procedures.loss-steps"],
  ["theft", "ledger-page.key-procedures.theft", "ledger-page.key-procedures.theft-steps"],
] as const;

/** What to do when the key is to be changed, is lost, or was stolen. */
function KeyProcedures({ file }: { file: string }) {
  const t = useTell();
  return (
    <Sheet id="key-procedures" title={t("ledger-page.key-procedures.heading")}>
      <p>{t("ledger-page.key-procedures.lead")}</p>
      {procedures.map(([name, heading, steps]) => (
        <details key={name}>
          <summary>{t(heading)}</summary>
          <ol>
            {t(steps, { file })
              .split("\n")
              .map((step) => (
                <li key={step}>{step}</li>
              ))}
          </ol>
        </details>
      ))}
    </Sheet>
  );
}

/** How far the shared ledger is behind this bench's own, in words. */
function Replication({ replication }: { replication: ReplicationView | undefined }) {
  const t = useTell();
  if (!replication) return <p>{t("ledger-page.replication.none")}</p>;
  const { state, lastAt, place, toSend, why } = replication;
  if (state === "up-to-date")
    return (
      <p>
        {t("ledger-page.replication.up-to-date", { at: lastAt ?? "" })} {place}
      </p>
    );
  return (
    <>
      <p>
        <strong>{t("ledger-page.replication.waiting")}</strong>{" "}
        {lastAt === null
          ? t("ledger-page.replication.never")
          : t("ledger-page.replication.last", { at: lastAt })}{" "}
        {toSend !== null && t("ledger-page.replication.to-send", { count: toSend })}
      </p>
      {why !== null && (
        <p>
          <Sentence message={why} />
        </p>
      )}
    </>
  );
}
