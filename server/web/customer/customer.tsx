import type { FastifyInstance } from "fastify";
import {
  type CustomerView,
  CustomerWindow,
  Indication,
  ItemShown,
  PriceShown,
} from "../../../views/customer/index.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { type Tell, tell, tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import { page, render } from "../../../views/page.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { lotOf } from "../../lots/evolve.ts";
import { settlementOf } from "../../settlements/evolve.ts";
import type { LotPrice } from "../../settlements/price.ts";
import { currentPrices } from "../../settlements/settlement.ts";
import type { Bench } from "../../station/bench.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { type Manner, whenOf } from "../when.ts";

/** Seconds between two heartbeats; the window turns grey when it misses two. */
const heartbeatSeconds = 2;
/** How often silence is looked at, so that an old weight does not stay on show. */
const ageEveryMs = 1000;

/** The window that faces the customer: the instrument's own indication, unaltered, the price locked for the lot, and nothing computed. */
export function customerRoutes(
  app: FastifyInstance,
  {
    bench,
    ledger,
    settings,
    demo,
  }: { bench: Bench; ledger: Ledger; settings: SettingsRepository; demo: boolean },
): { priceLocked: () => void } {
  /** promised for the lot whose pieces are being weighed, as they were read last */
  let prices: readonly LotPrice[] = [];
  async function readLot(): Promise<void> {
    const id = bench.item?.lot;
    const entries = id === undefined ? [] : await ledger.entriesOf(id);
    // Another piece may have come while the ledger was read; then its own reading counts.
    if (bench.item?.lot === id) prices = lotOf(entries)?.closed ? [] : currentPrices(settlementOf(entries));
  }
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["indication", (_, locale) => render(<Indication {...indicationOf(bench, locale)} />, locale)],
      ["piece-shown", (_, locale) => render(<ItemShown {...itemOf(bench, locale)} />, locale)],
      [
        "price-shown",
        (_, locale) => render(<PriceShown prices={pricesOf(prices, { locale, zone: app.zone() })} />, locale),
      ],
    ]),
    heartbeatSeconds * 1000,
  );
  bench.scale?.onLine(() => stream.changed("indication"));
  bench.onChange(() => stream.changed("indication", "piece-shown"));
  const ageing = setInterval(() => stream.changed("indication"), ageEveryMs);
  ageing.unref();
  const showPrice = () =>
    readLot().then(
      () => stream.changed("price-shown"),
      // A ledger in trouble is told of on the pages of the bench; this window keeps the price it has.
      () => undefined,
    );
  bench.onChange(() => void showPrice());
  app.addHook("onClose", async () => clearInterval(ageing));
  app.addHook("preClose", async () => stream.close());

  app.get("/customer", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/customer", demo });
    const { verifiedScale, verifiedUntil } = settings.now.house;
    await readLot();
    const view: CustomerView = {
      ...indicationOf(bench, frame.locale),
      ...itemOf(bench, frame.locale),
      prices: pricesOf(prices, frame),
      heartbeatSeconds,
      ...(verifiedScale === "" ? {} : { scale: { number: verifiedScale, validUntil: verifiedUntil } }),
      demo,
    };
    return html(
      reply,
      page({
        ...frame,
        title: tellerOf(frame.locale)("customer.title"),
        kind: "plain",
        main: <CustomerWindow {...view} />,
      }),
    );
  });
  app.get("/customer/live", (request, reply) => stream.join(request, reply, ""));
  return { priceLocked: () => void showPrice() };
}

/** Digits and unit exactly as they came; none while none is fresh. */
function indicationOf({ scale, item }: Bench, locale: Locale): Pick<CustomerView, "indication" | "state"> {
  const live = scale?.live();
  const t = tellerOf(locale);
  if (!live) return typedIndication(item, t);
  if (live.state === "reading")
    return { indication: `${live.text} ${live.unit}`, state: t(`balance.stability.${live.stability}`) };
  return { state: tell(live.message, locale) };
}

/** Without a cable the last reading that a person typed is shown, and said to be typed. */
function typedIndication(item: Bench["item"], t: Tell): Pick<CustomerView, "indication" | "state"> {
  const last = item && !item.closed ? item.captures.findLast(({ excluded }) => !excluded) : undefined;
  return last
    ? { indication: `${last.text} ${last.unit}`, state: t("customer.typed") }
    : { state: t("customer.nothing") };
}

/** The piece with its dry reading as it came, which stays on show while it hangs in the water. */
function itemOf({ item }: Bench, locale: Locale): Pick<CustomerView, "piece" | "kept"> {
  if (!item || item.closed) return {};
  const counting = item.captures.filter(({ excluded }) => excluded === undefined);
  const dry = counting.findLast(({ role }) => role === "dry");
  return {
    piece: `${item.ticket} ${item.description}`.trim(),
    ...(dry ? { kept: `${inLocale(dry.text, locale)} ${dry.unit}` } : {}),
  };
}

/** What is paid for each metal of the lot, as it was locked: the price, the share of it, where it came from. */
function pricesOf(prices: readonly LotPrice[], { locale, zone }: Manner): CustomerView["prices"] {
  const t = tellerOf(locale);
  return prices.map(({ metal, price, currency, per, ratePercent, source, at, lockedAt }) => ({
    metal: t(`lots.metals.${metal}`),
    price: t("customer.price-is", {
      price: inLocale(price, locale),
      currency,
      per: t(`payout.pers.${per}`),
    }),
    rate: t("customer.rate", { rate: inLocale(ratePercent, locale) }),
    from: t("customer.price-from", { source, at, locked: whenOf(lockedAt, zone) }),
  }));
}
