import type { FastifyInstance } from "fastify";
import { type CustomerView, CustomerWindow, Indication, PieceShown } from "../../views/customer/index.tsx";
import { page, render } from "../../views/page.tsx";
import { type Locale, words } from "../../views/words/index.ts";
import { told } from "../../views/words/told.ts";
import type { Bench } from "../bench/bench.ts";
import type { KeptSettings } from "../bench/kept-settings.ts";
import { type Draw, LiveStream } from "./live-stream.ts";
import { frameOf } from "./look.ts";
import { html } from "./page-request.ts";

/** Seconds between two heartbeats; the window turns grey when it misses two. */
const heartbeatSeconds = 2;
/** How often silence is looked at, so that an old weight does not stay on show. */
const ageEveryMs = 1000;

/** The window that faces the customer: the instrument's own indication, unaltered, and nothing computed. */
export function customerRoutes(
  app: FastifyInstance,
  { bench, settings, demo }: { bench: Bench; settings: KeptSettings; demo: boolean },
): void {
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["indication", (_, locale) => render(<Indication {...indicationOf(bench, locale)} />, locale)],
      ["piece-shown", (_, locale) => render(<PieceShown {...pieceOf(bench)} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  bench.scale?.onLine(() => stream.changed("indication"));
  bench.onChange(() => stream.changed("indication", "piece-shown"));
  const ageing = setInterval(() => stream.changed("indication"), ageEveryMs);
  ageing.unref();
  app.addHook("onClose", async () => clearInterval(ageing));
  app.addHook("preClose", async () => stream.close());

  app.get("/customer", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/customer", demo });
    const { verifiedScale, verifiedUntil } = settings.now.house;
    const view: CustomerView = {
      ...indicationOf(bench, frame.locale),
      ...pieceOf(bench),
      heartbeatSeconds,
      ...(verifiedScale === "" ? {} : { scale: { number: verifiedScale, validUntil: verifiedUntil } }),
      demo,
    };
    return html(
      reply,
      page({
        ...frame,
        title: words(frame.locale).customer.title,
        kind: "plain",
        main: <CustomerWindow {...view} />,
      }),
    );
  });
  app.get("/customer/live", (request, reply) => stream.join(request, reply, ""));
}

/** Digits and unit exactly as they came; none while none is fresh. */
function indicationOf({ scale, piece }: Bench, locale: Locale): Pick<CustomerView, "indication" | "state"> {
  const live = scale?.live();
  const say = words(locale).customer;
  if (!live) return typedIndication(piece, say);
  if (live.state === "reading") return { indication: `${live.text} ${live.unit}`, state: say[live.steady] };
  return { state: told(live.says, locale) };
}

/** Without a cable the last reading that a person typed is shown, and said to be typed. */
function typedIndication(
  piece: Bench["piece"],
  say: { typed: string; nothing: string },
): Pick<CustomerView, "indication" | "state"> {
  const last = piece && !piece.closed ? piece.captures.findLast(({ setAside }) => !setAside) : undefined;
  return last ? { indication: `${last.text} ${last.unit}`, state: say.typed } : { state: say.nothing };
}

function pieceOf({ piece }: Bench): { piece?: string } {
  return piece && !piece.closed ? { piece: `${piece.ticket} ${piece.description}`.trim() } : {};
}
