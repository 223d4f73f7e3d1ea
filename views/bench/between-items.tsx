import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { Fold } from "../sheet.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, DemoPieceView } from "./view.ts";

/** How many invented pieces lie open; the others are folded. */
const inSight = 8;

/** Between two pieces: the record that was written, what must stay dry, and in a demonstration what can be tried. */
export function BetweenItems({ view }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  const { item, demo } = view;
  return (
    <>
      {item?.closed?.how === "recorded" && (
        <p class="state state-consistent lead">
          <span class="sign" aria-hidden="true">
            ✓
          </span>
          <span>
            {t("bench.record-written", { ticket: item.ticket })}{" "}
            <a href={`/records/${item.id}`}>{t("bench.read-record")}</a>
          </span>
        </p>
      )}
      {demo?.behind !== undefined && item && (
        <p class="hint">
          {t("bench.opening.demo-truth", {
            ticket: item.ticket,
            truth: tellId("demo.truth", demo.behind, locale),
          })}
        </p>
      )}
      <p class="check-note">
        <strong>{t("bench.opening.keep-dry")}</strong> {t("bench.opening.keep-dry-what")}
      </p>
      {demo && <DemoChoice view={view} items={demo.items} />}
      <p class="row">
        <a href="/plan">{t("bench.opening.plan")}</a>
        <a href="/tickets">{t("tickets.title")}</a>
      </p>
    </>
  );
}

function DemoChoice({ view, items }: { view: BenchView; items: readonly DemoPieceView[] }) {
  const t = useTell();
  return (
    <section class="demo-choice">
      <p>{t("bench.opening.demo", { counter: t("demo.counter") })}</p>
      <DemoPieces view={view} items={items.slice(0, inSight)} />
      {items.length > inSight && (
        <Fold title={t("bench.opening.demo-more", { count: items.length - inSight })}>
          <DemoPieces view={view} items={items.slice(inSight)} />
        </Fold>
      )}
    </section>
  );
}

function DemoPieces({ view, items }: { view: BenchView; items: readonly DemoPieceView[] }) {
  const locale = useLocale();
  return (
    <ul>
      {items.map((item) => (
        <li key={item.id}>
          <BenchForm view={view} to="/demo/piece" hidden={{ piece: item.id }}>
            <button type="submit" class="plain">
              {item.ticket}: {tellId("demo.pieces", item.id, locale)}
            </button>
          </BenchForm>
        </li>
      ))}
    </ul>
  );
}
