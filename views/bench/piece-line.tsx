import { useLocale, useTell } from "../messages/spoken.ts";
import { metalTold } from "../messages/tell.ts";
import { TitleLine } from "../title-line.tsx";
import { CallOff } from "./item-end.tsx";
import type { BenchView } from "./view.ts";

/** First line of the bench: the piece and what it is claimed to be, or that a new one may come. */
export function PieceLine({ view }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  const { item } = view;
  if (!item || item.closed) return <TitleLine title={t("bench.title")} note={t("bench.opening.heading")} />;
  const claim = view.bands.find(({ id }) => id === view.claim);
  return (
    <TitleLine
      title={item.ticket}
      typed
      note={[item.description, claim && `${t("bench.opening.claim")} ${metalTold(claim, locale)}`]
        .filter(Boolean)
        .join(" · ")}
    >
      <CallOff view={view} />
    </TitleLine>
  );
}
